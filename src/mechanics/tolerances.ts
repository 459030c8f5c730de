/** A number that decides: a slack, two things that count as equal, a cut-off, a limit of work. */
interface Deciding {
  readonly value: number
  readonly unit: string
  /** What it decides. */
  readonly means: string
  /** Why it is this large. */
  readonly why: string
}

/**
 * Every number that decides an answer by being small, near or large enough; the code takes them from
 * here. The page shared/docs/numbers.md is made from this table ("npm run numbers"). A program unit is
 * 10 um, so that coefficients, limits and moves of the linear program lie near 1.
 */
// prettier-ignore
export const toleranceTable = {
  // shares of tolerance
  share: { value: 1e-6, unit: 'of a limit', means: 'room in every comparison with a share: a plan may pass a tolerance by this much',
    why: 'what a hundred roundings of the simplex leave, and a thousandth of what the finest dial shows' },
  overFloor: { value: 5e-7, unit: 'of a limit', means: 'a least share farther than this over the share asked for makes a train impossible; nearer it is planned, or stands, at its least share',
    why: 'half the room of a comparison with a share: a plan at the least share has its last digits over it, and must still be within that room' },
  noRoomFrom: { value: 0.85, unit: 'of a tolerance', means: 'from this share on a plan is lost to the first error, and is called so',
    why: 'common practice, no source' },
  airGap: { value: 0.1, unit: 'of the mean gap', means: 'an air gap may differ from the mean one around by so much, where no other limit is entered',
    why: 'common practice, no source' },
  onShare: { value: 1e-3, unit: 'of a tolerance', means: 'a plan this near to the share asked for stands on it',
    why: 'a tenth of the whole percent that is shown' },
  leastAngle: { value: 1e-6, unit: 'mrad', means: 'an angle at gear teeth may fall short of its least by so much',
    why: 'a micrometre over a kilometre: the last digits of the solver' },
  readsAlike: { value: 5e-5, unit: 'of a tolerance', means: 'two shares this near read as the same',
    why: 'half of the last of the two decimals of a percent that are shown at most' },
  noFloor: { value: 1e-6, unit: 'of a tolerance', means: 'a least share below this is nothing', why: 'the room of every comparison with a share' },
  sameFloor: { value: 1e-4, unit: 'relative', means: 'two least shares this near are the same floor',
    why: 'far over the last digits, far under the percent that is shown' },
  noBetter: { value: 1e-6, unit: 'relative', means: 'a worst share that comes down by less is worth no motion, even a free one',
    why: 'the room of every comparison with a share' },
  // what one limit alone would have to give
  aloneRoom: { value: 1e-5, unit: 'relative', means: 'an amount that is told to be enough is larger than the least by this much',
    why: 'ten times the room of a comparison with a share, so that it is still enough when it is entered; no digit shows it' },
  reasonableTimes: { value: 10, unit: 'times the limit', means: 'an amount over this is not told as something that one limit could give',
    why: 'common practice, no source' },
  finestEntered: { value: 1e-3, unit: 'mrad, mm or in', means: 'finest step of a slope or a gap that is told to be entered', why: 'what anybody enters or reads; common practice, no source' },
  digit: { value: 1e-9, unit: 'of a step of what is told', means: 'a last digit that makes no further step when an amount is rounded up or down', why: 'last digits of the arithmetic' },
  // cost
  sameCost: { value: 1e-6, unit: 'relative', means: 'two costs, or two numbers of two choices, this near are equal', why: 'what a plan is promised to be the cheapest by' },
  equalCost: { value: 9e-7, unit: 'relative', means: 'plans this near to the least cost are equal, and the one with the smallest worst share is taken',
    why: 'the 1e-6 promised, less room for the last digits of the solver' },
  worthSlack: { value: 1e-5, unit: 'relative', means: 'a worst share that would come down by less is left, where parts of equal cost could give one another room',
    why: 'half of what plans of equal cost are promised to agree by' },
  noSaving: { value: 1e-4, unit: 'of a unit of cost for a unit of room', means: 'a limit that saves less when loosened has no price',
    why: 'what the last digits of the solver make of a difference of two costs' },
  noPriceRoom: { value: 1e-3, unit: 'program units', means: 'a price that holds for less room held for none', why: '0.01 um, which nothing shows' },
  ended: { value: 1e-4, unit: 'of the cost', means: 'a rounding search that ended is told where cost and bound lie farther apart', why: 'less is shown by no digit; asked for beside a whole fine unit' },
  forLeaving: { value: 0.01, unit: 'of the cost', means: 'most that leaving all moves under `plan.leave` alone may cost, where they could be told', why: 'an instruction less is worth that; half of what a rounding is promised to be within' },
  // duals
  noPress: { value: 1e-6, unit: 'of the largest, or of a unit of cost a program unit', means: 'a dual below this presses on nothing',
    why: 'ten times the reduced costs of about 1e-7 that the simplex stops at' },
  noPressElastic: { value: 1e-9, unit: 'of the largest', means: 'a dual below this is left out of a proof of impossibility',
    why: 'a dual left out by mistake costs the proof, so only true noughts are' },
  noCurvePrice: { value: 1e-9, unit: 'cost a unit of room', means: 'a circle with a smaller dual does not bend the trade-off',
    why: 'a curve called straight by mistake would be drawn wrong, so only true noughts count' },
  // answers of the solver
  passed: { value: 1e-6, unit: 'program units', means: 'most that an answer of the solver may pass a row or a bound by',
    why: '1e-5 um: a hundred times under what a plan may pass a limit by' },
  pathStill: { value: 1e-11, unit: 'program units for each of what moves', means: 'a constraint nearer by less is not met on the path of an optimum', why: 'a hundred times what doubles leave' },
  pathKept: { value: 1e-10, unit: 'of 1 or of the bound', means: 'a constraint passed by less is kept on such a path', why: 'the same; the answer is judged by what a solver may pass' },
  pathTouched: { value: 1e-7, unit: 'of 1 or of the bound', means: 'an answer of the solver this near to a bound stands at it', why: 'where the simplex stops' },
  pathPart: { value: 1e-7, unit: 'none', means: 'a constraint that depends on another by less does not depend on it', why: 'a pivot this small loses its digits' },
  pathRatio: { value: 1e-12, unit: 'of 1 or of the ratio', means: 'constraints that let go nearer together let go at once', why: 'what doubles leave' },
  axialOver: { value: 1e-6, unit: 'mm', means: 'a gap, a stretch or a rotor that is over by less is not told so', why: '1 nm: what an answer of the solver may pass a row by' },
  duality: { value: 1e-7, unit: 'relative', means: 'most that value and dual bound of an answer may lie apart', why: 'where the simplex stops, in double precision' },
  dualTaken: { value: 0.01, unit: 'relative', means: 'a correction that takes more of a dual than this has the dual itself in hand, not its last digits', why: 'the last digits of a solver are a millionth of that' },
  dualLent: { value: 1e-6, unit: 'relative', means: 'weight of a row without a dual beside the largest one, where such rows have to take a correction', why: 'so little that rows with a dual take it wherever they can' },
  stray: { value: 1e-6, unit: 'relative', means: 'most that a dual or reduced cost may point to a side without a bound', why: 'ten times where the simplex stops' },
  mixedBinary: { value: 1e-5, unit: 'of one', means: 'most that a binary of a mixed program may lie from 0 or 1', why: 'looser than for a linear program; what it finds is planned again' },
  mixedPassed: { value: 1e-5, unit: 'program units', means: 'most that a mixed program may pass a row by', why: 'looser than for a linear program; what it finds is planned again' },
  farthest: { value: 1e5, unit: 'um', means: 'no plan moves anything farther; bounds the columns that the dual bound needs bounded', why: '100 mm: far over every hole and pack' },
  rowDust: { value: 1e-12, unit: 'of the largest of its row', means: 'a coefficient below this is left out of a row that is scaled', why: 'what roundings leave of a sine; the answer is judged on the row as it stands' },
  farCoefficient: { value: 5e3, unit: 'none', means: 'a program with a larger coefficient is given to the solver with its rows scaled', why: 'ten times and more what usual trains have; the simplex stalls where sizes lie too far apart' },
  farBound: { value: 1e5, unit: 'program units', means: 'the same of a limit', why: '1 m: over every limit of the trade' },
  seconds: { value: 20, unit: 's', means: 'a linear program that takes longer has stopped', why: 'far over what any train has needed' },
  // circles and rounds of tangents
  holeSlack: { value: 1e-5, unit: 'um', means: 'tangents of a hole are added until it is passed by less', why: 'a hundred times inside what a plan may pass a limit by' },
  roundSlack: { value: 1e-8, unit: 'of a limit', means: 'tangents of a round tolerance are added until it is passed by less', why: 'a hundred times inside the room of a share' },
  sameTangent: { value: 1e-4, unit: 'rad', means: 'two tangents this near are one',
    why: 'what lies beyond between them is under 1e-8 of the radius, the slack of a circle' },
  onAxis: { value: 1e-15, unit: 'none', means: 'a sine or cosine below this is 0', why: 'so that tangents along the axes have no stray terms' },
  nearCircle: { value: 0.02, unit: 'of the radius', means: 'tangents farther from the point are not carried on', why: 'fewer rows; one that is missed is found again' },
  mostRounds: { value: 80, unit: 'rounds', means: 'rounds of tangents before a program has stopped', why: 'more than any train has needed' },
  mostShareRounds: { value: 40, unit: 'rounds', means: 'the same where it is only asked whether a share is reached', why: 'more than any train has needed' },
  mostMixedRounds: { value: 12, unit: 'rounds', means: 'rounds of tangents of a mixed program before what was found is taken', why: 'what is found is planned again' },
  settled: { value: 1e-7, unit: 'relative', means: 'a round that brings less brought nothing; a point this near to its bound reaches it', why: 'where the simplex stops' },
  settledShare: { value: 1e-9, unit: 'of a tolerance', means: 'the same for a share, or a cost, of nothing', why: 'a relative room is none there' },
  secondTry: { value: 1e-8, unit: 'of a tolerance', means: 'how far above the least share a trade-off starts where it could not start on it', why: 'ten times the room it starts with' },
  mostTurns: { value: 40, unit: 'turns', means: 'turns between bound and point before a least share has stopped', why: 'more than any train has needed' },
  // proof
  allowedPass: { value: 1e-3, unit: 'um', means: 'most a plan may pass a limit of length by', why: 'a thousandth of what a dial shows' },
  allowedGap: { value: 2e-5, unit: 'of the cost', means: 'most that cost and bound of a plan may lie apart', why: 'twenty times the room that equal costs have: nothing that digits show' },
  allowedGapLeast: { value: 1e-2, unit: 'um', means: 'the same where the cost is next to nothing', why: 'a hundredth of what a dial shows' },
  onTheWay: { value: 2e-3, unit: 'um', means: 'most a pose on the way may pass a limit by', why: 'twice what the plan may: it is written with 12 digits and read again' },
  // lengths
  reached: { value: 2e-4, unit: 'program units', means: 'a foot this near to a limit that another of its row leans on is at it too', why: '2 nm: what a true circle may be passed by, doubled' },
  onLimit: { value: 1e-6, unit: 'um', means: 'a value that lies on a limit but for rounding keeps it', why: 'far under every reading, far over double precision' },
  samePlace: { value: 1e-4, unit: 'um', means: 'a height, or a slide, this near to another is that one', why: 'what the last digits of the solver leave' },
  noMotion: { value: 1e-7, unit: 'um at the outermost foot', means: 'a motion below this is none', why: 'last digits of the solver' },
  noRoll: { value: 1e-6, unit: 'mrad', means: 'a geared machine rolled by less is not rolled', why: '1e-6 um in 1 m' },
  left: { value: 1e-3, unit: 'um', means: 'a move this near under the smallest that is worth making counts as that', why: 'a thousandth of what a dial shows' },
  plateSum: { value: 1e-3, unit: 'um a plate', means: 'plates that add up to their pack this nearly make it', why: '1 nm: thicknesses are whole nanometres' },
  packOut: { value: 0.01, unit: 'um', means: 'a pack of which no more stays is out as a whole', why: 'thinner than any plate, over what 12 digits leave' },
  unseen: { value: 0.1, unit: 'um', means: 'a move that no shim or dial shows: a body that moves less at every foot stays, has no step, has arrived', why: 'a tenth of what the finest dial shows' },
  flatFoot: { value: 0.05, unit: 'um', means: 'a shim for soft foot thinner than this is none', why: 'a twentieth of what a gauge shows' },
  sameX: { value: 1e-6, unit: 'mm', means: 'feet, points or facts this near along the train stand at one place', why: '1 nm: only what was typed alike' },
  largestLength: { value: 1e6, unit: 'mm', means: 'longest length that is read', why: '1 km: beyond it a unit is wrong' },
  largestFine: { value: 1e6, unit: 'um', means: 'largest fine quantity that is read', why: '1 m: beyond it a unit is wrong' },
  // whole steps
  wholeStep: { value: 1e-6, unit: 'of a step', means: 'this near to a whole number of steps is that number', why: 'far under a step, far over double precision' },
  giveStep: { value: 1e-3, unit: 'of a step', means: 'the same for what a limit has to give', why: 'a give comes from the solver, with its last digits' },
  weightPart: { value: 1e-4, unit: 'of a weight', means: 'weights are compared as whole numbers of this part', why: 'finer than weights that people enter' },
  gapTie: { value: 1e-4, unit: 'of a shim step', means: 'preference, in a tie, for the foot that shows most', why: 'far under what a step is worth' },
  orderTie: { value: 1e-6, unit: 'of a shim step', means: 'preference, after that, for the first foot', why: 'a hundredth of the other preference' },
  // trade-off
  bent: { value: 2e-4, unit: 'of the height', means: 'chord and curve of a trade-off agree, where circles bend it', why: 'a tenth of a point on a chart of 500' },
  sharp: { value: 1e-7, unit: 'of the height', means: 'the same where nothing bends it', why: 'its corners are exact, to where the simplex stops' },
  lowest: { value: 1e-2, unit: 'of the largest height', means: 'lower stretches are judged as if they were this high', why: 'a part of next to nothing would ask for digits that nobody sees' },
  pastFloor: { value: 1.25, unit: 'times the least share', means: 'how far the trade-off is followed where nothing moving is no answer and the least share is over the tolerance', why: 'the shares that anybody asks for there; common practice, no source' },
  noHeight: { value: 1e-6, unit: 'program units', means: 'a height of a trade-off below this is nothing', why: '1e-5 um' },
  shortest: { value: 1e-7, unit: 'of a tolerance', means: 'stretches of a trade-off shorter than this are not looked into', why: 'where the simplex stops' },
  inside: { value: 1e-3, unit: 'of the stretch', means: 'a corner is looked for at least this far from both ends', why: 'on an end nothing new is learned' },
  mostCurveTurns: { value: 2000, unit: 'turns', means: 'turns before a curve is taken as it is', why: 'four times what any train has needed' },
  // algebra
  singular: { value: 1e-9, unit: 'of the largest', means: 'a singular value below this leaves something of the readings open (columns scaled)', why: 'readings that differ by less say the same' },
  noticed: { value: 1e-6, unit: 'none', means: 'a part of an open direction below this (scaled) is not what is open', why: 'far under 1, far over the last digits' },
  parallel: { value: 1e-6, unit: 'none', means: 'two columns this near to one another do not tell two directions apart', why: 'the squares of their sines, in double precision' },
  dependent: { value: 1e-12, unit: 'of its diagonal', means: 'a pivot below this belongs to an unknown that depends on the others', why: 'a thousand roundings' },
  orthogonal: { value: 1e-15, unit: 'of the lengths', means: 'two columns whose product is below this are at right angles', why: 'double precision' },
  ridge: { value: 1e-9, unit: 'none', means: 'weight of the smallest heights in a fit of soft feet', why: 'so little that only departures which no reading speaks of feel it' },
  // a train as it ran
  exactPlace: { value: 1e-3, unit: 'um', means: 'movement measured at a place is unsure by this at least', why: 'a thousandth of what a dial shows, so that nothing is divided by 0' },
  slowCooling: { value: 1e-3, unit: 'of the way', means: 'slowest cooling looked at, by what is done at the last reading, but for none at all', why: 'a straight line to every gauge' },
  sameRate: { value: 1e-4, unit: 'none', means: 'rate times time below which a cooling is worked out by its series', why: 'what the series leaves out, a square of it, is lost in the digits that the closed form loses there' },
  // last digits
  dust: { value: 1e-9, unit: 'any unit', means: 'a number below this is rounding, and is written as 0', why: 'under what anyone can enter or read in any unit of a document' },
  lastDigits: { value: 1e-9, unit: 'relative', means: 'numbers this near differ by rounding; a pivot, a leverage or a determinant this small is none',
    why: 'a million roundings in double precision' },
  fewRoundings: { value: 1e-15, unit: 'relative', means: 'numbers this near differ by a few roundings', why: 'numbers of twelve digits lie a thousand times farther apart' },
  noStretch: { value: 1e-12, unit: 'of a tolerance', means: 'a stretch of the axis of shares is at least this long', why: 'only so that nothing is divided by 0' },
  // work
  roundingWork: { value: 6e6, unit: 'rows x columns', means: 'most work for one question of the rounding search', why: 'counted and not timed, so that bytes do not depend on the machine' },
  sideWork: { value: 3e5, unit: 'rows x columns', means: 'most work for one asked on the side', why: 'a twentieth of that' },
  mostSums: { value: 200_000, unit: 'sums', means: 'most packs that a store makes', why: 'more than any store makes' },
  mostPacks: { value: 20_000, unit: 'packs', means: 'packs of one thickness that are looked at for the one of most equal plates', why: 'more than any store of the trade makes of one thickness' },
  mostSubsets: { value: 4_000, unit: 'sums', means: 'different sums of the plates under one foot that are looked at', why: 'a pack of twelve different plates' },
  mostBodies: { value: 12, unit: 'bodies', means: 'up to here every choice of held machines is solved', why: '4096 choices; beyond it a mixed program finds the best' },
  mostRows: { value: 200, unit: 'rows', means: 'longest list of choices that is not complete', why: 'nobody reads more' },
  mostOwnShares: { value: 40, unit: 'choices', means: 'choices of held machines that are each given the share of tolerance at which they reach a chance that is asked for', why: 'a few seconds, and more than anybody compares; the others are told as they are at the share asked for' },
  mostStops: { value: 12, unit: 'pieces', means: 'most pieces that a way is cut into', why: 'more is no work anyone does' },
  mostPortions: { value: 8, unit: 'portions', means: 'most portions that moves are cut into', why: 'more is no work anyone does' },
  planWork: { value: 4e8, unit: 'rows times columns of the programs asked', means: 'usual work that a plan, and its prices, may each take before they are told to be unfinished', why: 'a minute or two; six hundred times what any example takes, ninety times what thirty machines take. Counted and not timed, so that bytes do not depend on the machine' },
  holdsWork: { value: 4e9, unit: 'the same', means: 'usual work that a list of choices of held machines may take, and as much again what is said of them',
    why: 'some minutes; eight times what twelve machines in a line take, each of whose 4096 choices is solved' },
  reasonsWork: { value: 2e7, unit: 'the same', means: 'usual work that the conflict, and the remedies, of an impossible train may each take', why: 'ten seconds or so; a dozen times what any example takes' },
  mostLooks: { value: 4000, unit: 'looks', means: 'looks at orders of work before the search for one ends', why: 'counted and not timed, so that bytes do not depend on the machine' },
} as const satisfies Record<string, Deciding>

/** The values alone, by name, in the units of the table. */
export const tol: { readonly [Name in keyof typeof toleranceTable]: number } = Object.fromEntries(
  Object.entries(toleranceTable).map(([name, { value }]) => [name, value]),
) as Record<keyof typeof toleranceTable, number>
