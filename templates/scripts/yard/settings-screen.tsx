/** Which hand, which light, whose phone. */
import type { ComponentChildren } from 'preact'
import { Age, Careful, type FrameProps, useNewer } from './frame.tsx'
import { hiddenMinutes } from './locking.ts'
import type { NewerPage } from './newer.ts'
import type { YardSettings } from './opened.ts'

export function SettingsScreen(
  frame: FrameProps & { readonly change: (to: YardSettings) => void; readonly newer: NewerPage },
) {
  const { yard, words, dates, change, newer } = frame
  const w = words.yard.page
  const { settings, index } = yard
  const { isKept } = useNewer(newer)
  const minutes = new Intl.NumberFormat(words.base.formats, {
    style: 'unit',
    unit: 'minute',
    unitDisplay: 'long',
  }).format(hiddenMinutes)
  return (
    <>
      <h1>{w.settingsHead}</h1>
      <Choice legend={w.by}>
        {index.people.length === 0 ? (
          <p class="soft">{w.byNone}</p>
        ) : (
          [{ id: null, name: w.byUnset }, ...index.people].map(({ id, name }) => (
            <Option
              key={id ?? ''}
              group="by"
              text={name}
              isChosen={settings.by === id}
              choose={() => change({ ...settings, by: id })}
            />
          ))
        )}
      </Choice>
      <Choice legend={w.hand}>
        {(['left', 'right'] as const).map((hand) => (
          <Option
            key={hand}
            group="hand"
            text={w.hands[hand]}
            isChosen={settings.hand === hand}
            choose={() => change({ ...settings, hand })}
          />
        ))}
      </Choice>
      <Choice legend={w.light}>
        {(['phone', 'light', 'dark', 'sun'] as const).map((light) => (
          <Option
            key={light}
            group="light"
            text={w.lights[light]}
            isChosen={settings.light === light}
            choose={() => change({ ...settings, light })}
          />
        ))}
      </Choice>
      <p>{w.textSize}</p>
      <p>{w.locks(minutes)}</p>
      {isKept ? <p>{w.offlineReady}</p> : null}
      <Age yard={yard} words={words} dates={dates} />
      <Careful {...frame} />
    </>
  )
}

function Choice({
  legend,
  children,
}: {
  readonly legend: string
  readonly children: ComponentChildren
}) {
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      {children}
    </fieldset>
  )
}

function Option({
  group,
  text,
  isChosen,
  choose,
}: {
  readonly group: string
  readonly text: string
  readonly isChosen: boolean
  readonly choose: () => void
}) {
  return (
    <label>
      <input type="radio" name={group} checked={isChosen} onChange={choose} /> {text}
    </label>
  )
}
