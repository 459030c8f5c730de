import type { Refusal } from '../document/refusal'
import { alignedWords, dueLine, siteWords, tightestWords } from '../engine/fieldwork/site/dueWords'
import { bySite, type TrainState } from '../engine/fieldwork/site/trainState'
import { counted } from '../language/names'
import type { Day } from '../mechanics/day'
import { heading, paragraph, sheetText } from './layout'
import { cautionText } from './remarksText'

/** How every train of every site stands on a day, what is due and why. */
export function siteText(
  today: Day,
  trains: readonly { readonly file: string; readonly state: TrainState }[],
  unread: readonly { readonly file: string; readonly refused: readonly Refusal[] }[],
): string {
  return sheetText([
    ...paragraph(
      `${counted(trains.length, 'train', 'trains')} on ${today}; the tightest coupling by the readings in each file.`,
    ),
    ...bySite(trains.map(({ state }) => state)).flatMap(([site, here]) => [
      ...heading(siteWords(site)),
      ...here.flatMap((state) => [
        ...paragraph(state.name, '', 2),
        ...paragraph(
          `tolerance used: ${tightestWords(state)}; last aligned: ${alignedWords(state)}`,
          '',
          6,
        ),
        ...paragraph(dueLine(state), '', 6),
      ]),
    ]),
    ...(unread.length > 0 ? heading('NOT READ') : []),
    ...unread.flatMap(({ file, refused: [first] }) =>
      paragraph(`${file}: ${first ? `${first.at}: ${first.why}` : 'no train'}`, '  - '),
    ),
    ...cautionText(),
    '',
  ])
}
