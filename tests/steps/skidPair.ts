import { pair, given, type Json } from '../engine/pair'

/** Motor A stays; pump B stands on a skid whose feet are wide apart; both of the pair's x. */
export const skidPair = (pump: Json = {}, skid: Json = {}): Json => {
  const document = pair({
    right: { base: 500, ...pump },
    found: [given(0, 0)],
  })
  return {
    ...document,
    skids: [
      {
        id: 'S',
        name: 'Bedplate',
        carries: ['B'],
        feet: [500, 2500].flatMap((x) =>
          [600, -600].map((y) => ({ id: `${x}${y > 0 ? 'a' : 'b'}`, x, y })),
        ),
        ...skid,
      },
    ],
  }
}
