/**
 * "Red Apple Rag", traditional, with printed bowing; its typesetting is dedicated to the public
 * domain (Mutopia Project). A published check of strokes and of the map.
 */
export const redAppleRag = `X:1
T:Red Apple Rag
M:4/4
L:1/8
K:G
(uB,A,)|:G,A,B,C DFGA|BdBA GEDB,|v(CB,)u(CD) EGcd|egedc4|u(DE)FG A^cde|fafe dfed|v(gb)u(ge) dBAF|1 v(GF)u(AF) GEDB,:|2 v(GF)u(AF) GABc||
|:vd ug2 vd ug4|u(ba)gb aged|cdcd ecef|gefg agec|v(dc)u(de) fdfg|abag fdef|v(gb)u(ge) dBAF|1 v(GF)u(AF) GABc:|2 v(GF)u(AF) G4|]`;
