// @vitest-environment happy-dom
import { flushPromises, mount } from '@vue/test-utils'
import { afterEach, expect, it, vi } from 'vitest'
import { defineComponent, h } from 'vue'
import { laterComponent } from '../../src/app/parts/laterComponent'
import { Later } from '../../src/app/services/later'

const Panel = defineComponent({
  props: { of: { type: String, default: '' } },
  setup:
    ({ of }) =>
    () =>
      h('p', of),
})

let wrapper: ReturnType<typeof mount> | undefined
afterEach(() => wrapper?.unmount())

it('a part that cannot be fetched says so in its place, and comes when it is asked for again', async () => {
  const fetch = vi
    .fn<() => Promise<{ default: typeof Panel }>>()
    .mockRejectedValueOnce(new TypeError('Failed to fetch dynamically imported module'))
    .mockResolvedValue({ default: Panel })
  wrapper = mount(laterComponent('The order of work', fetch), {
    props: { of: 'six steps' },
    slots: { instead: '<button>Back</button>' },
  })
  expect(wrapper.text()).toBe('')
  await flushPromises()
  expect(wrapper.get('[role=alert]').text()).toMatch(
    /^The order of work could not be loaded: the app is not reached, or a newer version has taken its place\./,
  )
  expect(wrapper.findAll('button').map((button) => button.text())).toEqual(['Try again', 'Back'])
  await wrapper.get('button').trigger('click')
  await flushPromises()
  expect(wrapper.html()).toBe('<p>six steps</p>')
  expect(fetch).toHaveBeenCalledTimes(2)
})

it('a part is fetched once, however often it is asked for, and again only where it did not come', async () => {
  const fetch = vi
    .fn<() => Promise<string>>()
    .mockRejectedValueOnce(new Error('gone'))
    .mockResolvedValue('here')
  const part = new Later(fetch)
  const first = [part.get(), part.get()]
  expect((await Promise.allSettled(first)).map(({ status }) => status)).toEqual([
    'rejected',
    'rejected',
  ])
  expect(part.fault.value).toContain('not reached')
  expect(part.value.value).toBeUndefined()
  expect(await Promise.all([part.get(), part.get()])).toEqual(['here', 'here'])
  expect([part.fault.value, part.value.value]).toEqual(['', 'here'])
  expect(fetch).toHaveBeenCalledTimes(2)
})
