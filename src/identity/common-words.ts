/**
 * Names that are also everyday words. Such a name is searched with its capital only, so that "it may heal"
 * does not stop a build because a horse is called May; each build says which names are searched so.
 * The list is our own and small. Words that the tool itself prints are added to it by `ownWords`.
 */
const list = `
january february march april may june july august september october november december
monday tuesday wednesday thursday friday saturday sunday spring summer autumn winter
mr mrs ms miss dr sir lady lord the of and de van von der den la le st saint
black white grey gray bay brown red blue green silver gold golden copper dun roan chestnut amber
star sky sun moon rain snow storm cloud wind frost ice fire flame ember dawn dusk day night shadow
rose lily daisy ivy fern heather holly hazel willow rowan ash oak olive clover poppy pepper ginger honey sugar
hope faith grace joy mercy patience will bill mark frank rich jack rob bob pat dot dash art rusty sandy dusty
king queen prince princess duke earl knight page boy girl lad lass baby old young big little small tall long short
good best dear happy merry lucky lucy bright clear swift quick fleet dancer dream magic legend echo story
bear fox wolf hawk robin wren bird dove swan hare otter badger mouse duck goose hen cock bull pony horse mare foal
hill wood field meadow brook river lake stone rock ford bridge mill farm house yard lane green park moor dale
north south east west up down left right near far high low hard soft light dark deep open close sharp
smith cook baker mason carter cooper fisher fowler gardener hunter marshall miller parker porter potter shepherd
archer bishop butler chase cross drew grant guy hall hand hart head heath hood hunt knot lamb law love mann marsh
moss nail noble pace peace piper pitt plum pope post price read reed rush sage savage self sharp shoe sole song
strong sweet tanner teal temple walker wall ward warden waters weaver web west wise worth wright
`

/** Words of everyday language that people and horses are called by, folded. */
export const commonWords: ReadonlySet<string> = new Set(list.trim().split(/\s+/))

/** What the tool prints of its own: single words, and words in twos. */
export interface OwnWords {
  readonly single: ReadonlySet<string>
  /** `frog width`: two words that follow each other in the tool's own text, folded. */
  readonly pairs: ReadonlySet<string>
  /** The same as written: `Frog width`. */
  readonly written: ReadonlySet<string>
}
