import { html as markup, type SafeHtml as Markup } from '@remix-run/html-template'

/**
 * Markup as a template: a text put into it is escaped, in elements and in quoted attributes, unless it
 * is markup itself; lists are joined, and undefined is nothing.
 */
export { markup, type Markup }

/** An attribute with the blank before it; nothing where there is no value. */
export const attribute = (name: string, value: string | undefined): Markup =>
  value === undefined || value === '' ? markup`` : markup` ${name}="${value}"`
