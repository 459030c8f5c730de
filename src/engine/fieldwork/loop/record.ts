import { withValue } from '../../../document/place'
import type { TrainDocument } from '../../../document/schema'
import { workRecordOf, type RecordPage } from '../../../document/work'
import { canonicalJson } from '../../../document/canonicalJson'
import { fnv64 } from '../../../document/fingerprint'

/** A page before it is sealed. */
export type PageDraft = Omit<RecordPage, 'seal'>

/** A record with one page more; the pages before it stay as they are, and it is sealed to them. */
export const addPage = (pages: readonly RecordPage[], draft: PageDraft): RecordPage[] => [
  ...pages,
  { ...draft, seal: sealOf(draft, pages.at(-1)?.seal ?? '') },
]

/**
 * A document with the pages that stand on the sheet now, unless it has more of its own: what was
 * written down stays, whatever else is taken back.
 */
export function withPagesOf(
  document: TrainDocument,
  now: TrainDocument | undefined,
): TrainDocument {
  const pagesOf = (one?: TrainDocument) => workRecordOf(one?.record)?.pages ?? []
  const pages = pagesOf(now)
  if (pages.length <= pagesOf(document).length) return document
  return withValue(document, ['record', 'pages'], pages)
}

/** Worked out from everything on the page and the seal of the page before. */
function sealOf({ kind, when, by, words, content }: PageDraft, before: string): string {
  return fnv64(canonicalJson({ kind, when, by, words, content, before }))
}

export type Verified =
  | { readonly sound: true }
  | { readonly sound: false; readonly page: number; readonly words: string }

/**
 * Whether every page is as it was written.
 * @returns the first page (from 0) that does not fit its seal: it was changed, or one before it was
 * taken out, put in or moved
 */
export function verifyRecord(pages: readonly RecordPage[]): Verified {
  const page = pages.findIndex((entry, i) => entry.seal !== sealOf(entry, pages[i - 1]?.seal ?? ''))
  if (page < 0) return { sound: true }
  const { kind = 'note', when = '' } = pages[page] ?? {}
  return {
    sound: false,
    page,
    words: `Page ${page + 1} (${kind}, ${when}) is not as it was written, or a page before it is missing.`,
  }
}
