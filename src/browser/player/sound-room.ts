/** How much of the room is heard beside the fiddle, and how long it rings, in seconds. */
const wet = 0.16;
const ring = 0.7;

/**
 * The way from the fiddle to the ear: a little of a small hall, and a limiter that nothing passes.
 * The hall's answer is noise that dies away, made here, the same each time.
 */
export function soundRoom(context: AudioContext): AudioNode {
  const entry = context.createGain();
  const limiter = context.createDynamicsCompressor();
  limiter.threshold.value = -3;
  limiter.ratio.value = 12;
  limiter.attack.value = 0.002;
  const hall = context.createConvolver();
  hall.buffer = hallAnswer(context);
  const share = context.createGain();
  share.gain.value = wet;
  entry.connect(limiter);
  entry.connect(hall).connect(share).connect(limiter);
  limiter.connect(context.destination);
  return entry;
}

function hallAnswer(context: AudioContext): AudioBuffer {
  const rate = context.sampleRate;
  const answer = context.createBuffer(2, Math.round(ring * rate), rate);
  let random = 20011;
  for (let channel = 0; channel < 2; channel++) {
    const samples = answer.getChannelData(channel);
    let soft = 0;
    for (let i = 0; i < samples.length; i++) {
      random = (Math.imul(random, 1664525) + 1013904223) | 0;
      soft += 0.35 * (random / 2147483648 - soft);
      const t = i / rate;
      samples[i] = t < 0.012 ? 0 : soft * Math.exp((-6.9 * t) / ring);
    }
  }
  return answer;
}

let room: AudioNode | null = null;

/** The page's one way out to the ear, awake. Ask for it when something was touched: browsers insist. */
export async function soundOut(): Promise<AudioNode> {
  room ??= soundRoom(new AudioContext());
  const context = room.context as AudioContext;
  if (context.state !== 'running') await context.resume();
  return room;
}
