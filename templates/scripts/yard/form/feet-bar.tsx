/** The four feet in the order in which the practice goes round, each with how much of it is done. */
import { progressOf } from './steps.ts'
import { useWriting } from './writing.ts'

export function FeetBar() {
  const { knowledge, draft, foot: now, chooseFoot, words, format, checked } = useWriting()
  const w = words.yardForm
  return (
    <nav class="yf-feet" aria-label={w.feet}>
      {knowledge.feetOrder.map((foot) => {
        const { done, of } = progressOf(knowledge, draft, foot)
        const isHeld = checked?.cautions.some(
          ({ caution, isNew }) => isNew && caution.level === 'stop' && caution.feet.includes(foot),
        )
        return (
          <button
            key={foot}
            type="button"
            aria-current={foot === now ? 'true' : undefined}
            aria-label={w.footName(format.foot(foot), done, of)}
            class={isHeld ? 'is-stop' : ''}
            onClick={() => chooseFoot(foot)}
          >
            <b>{foot}</b>
            <span>
              {done}/{of}
            </span>
            <progress value={done} max={Math.max(of, 1)} aria-hidden="true" />
          </button>
        )
      })}
    </nav>
  )
}
