/** Tunes made up for these tests. */

/** Sixteen bars as written, thirty-two as played, with most signs that a fiddle tune needs. */
export const reel = `X:1
T:The Wet Gate Hinge
R:reel
C:made up for a test
M:4/4
L:1/8
K:D
|:(dc)|"D"dAFA d2(ed)|f2ed "A"(3cBA ce|"D"dAFA d2 {e}de-|eafe "A7"c2(dc)|
"D"dAFA d2(ed)|vfaec ~A3 B|"G"(BGAB) "Em"GFEd|[1 "A"cABc "D"d2:|[2 "A"cABc d3 e||
|:"D"(fa)a2 bafa|g2eg "A"faef|"D"d2fa bafe|"Em"g3 f "A"edce|
"D"(fa)a2 bafa|[df]2ge =c2(Bc)|"Bm"d>e f2 "A"ecAc|1 "D"dedc d3 e:|2 "D"d6|]
`;

/** Slurs and ties over every phrase's edge, a pickup, low notes and ledger lines. */
export const jig = `X:2
T:Cold Toast
R:jig
M:6/8
L:1/8
K:G
D|G2B (dBG)|A2c ecA|GBd gdB|A3 G2(D|G2)B dBG|A2c ec(a|b)ag fdc|B3 G2:|
|:B|def g2b|agf gdB|cec BdB|A2B c2d|def g3-|gba gdB|(cBA GA,F|G,3) G2:|
`;

/** Parts that change key, no repeat signs, long bars. */
export const slipJig = `X:3
T:Nine Spoons
R:slip jig
M:9/8
L:1/8
K:Em
e2f gfe dBA|B2e edB G2A|e2f gfe dBA|BAG FED E3||
K:E
GFG BAB efe|c2B BAG F2E|GFG BAB e2g|fed cBA G3|]
`;
