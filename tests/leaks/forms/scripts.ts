/** Names in scripts without spaces, with case endings, with clitics. */
import type { FormSet } from '../battery.ts'

export const unspaced: FormSet = {
  kind: 'scripts without spaces',
  cast: {
    horse: '桜丸',
    owner: '田中 花子',
    privateWords: ['สวนดอกไม้', '青葉牧場'],
    others: [{ horse: '바람이', owner: '김민수' }],
  },
  forms: [
    ['replaced', '今日は«桜丸»の蹄を見た。'],
    ['replaced', '«桜丸»号は元気だ。'],
    ['replaced', '«田中»さんに伝えた。'],
    ['replaced', '飼主の«花子»さんが来た。'],
    ['replaced', '«田中花子»が来た。'],
    ['replaced', '«田中　花子»が来た。'],
    ['replaced', 'ที่«สวนดอกไม้»เมื่อวาน'],
    ['replaced', '今は«青葉牧場»にいる。'],
    ['replaced', '今は«青\u200B葉牧場»にいる。'],
    ['refused', '옆의 «바람이»는 건강하다.'],
    ['refused', '옆의 «바람이»가 왔다.'],
    ['replaced', '주인 «김민수»에게 말했다.'],
    ['replaced', '주인 «민수»씨가 왔다.'],
    ['refused', 'page:<p>桜<b>丸</b>だ</p>'],
    ['refused', 'page:<img alt="桜丸号">'],
    ['refused', 'path:portfolio/桜丸号/index.html'],
  ],
}

export const inflected: FormSet = {
  kind: 'case endings',
  cast: {
    horse: 'Снежинка',
    owner: 'Ольга Ветрова',
    privateWords: ['Зареченск'],
    others: [{ horse: 'Ασπροπόδης', owner: 'Ελένη Καρυάτη' }],
  },
  forms: [
    ['replaced', 'Вот «Снежинка» стоит.'],
    ['replaced', 'У «Снежинки» копыта.'],
    ['replaced', 'Мы видели «Снежинку» вчера.'],
    ['replaced', 'Со «Снежинкой» лучше.'],
    ['replaced', 'Сказали «Ольге» подождать.'],
    ['replaced', 'Видели «Ольгу» вчера.'],
    ['replaced', 'Сказали «Ветровой» подождать.'],
    ['replaced', 'Живут в «Зареченске» давно.'],
    ['replaced', 'Живут под «зареченском» давно.'],
    ['refused', 'Δίπλα ο «Ασπροπόδη» περπατά.'],
    ['replaced', 'Είπαμε στην «Ελένη» να περιμένει.'],
    ['replaced', 'Το άλογο της «Ελένης» είναι καλά.'],
  ],
}

export const clitics: FormSet = {
  kind: 'clitics and the article',
  cast: {
    horse: 'البرق',
    owner: 'سلمى الخطيب',
    privateWords: ['وادي الزهور'],
    others: [{ horse: 'כוכבית', owner: 'נועה גלבוע' }],
  },
  forms: [
    ['replaced', 'اليوم «البرق» بخير.'],
    ['replaced', 'اليوم «برق» بخير.'],
    ['replaced', 'ذهبنا «بالبرق» إلى البيت.'],
    ['replaced', 'قلنا «للبرق» اهدأ.'],
    ['replaced', 'قلنا «لسلمى» أن تنتظر.'],
    ['replaced', 'جاءت «وسلمى» معه.'],
    ['replaced', 'قال «الخطيب» نعم.'],
    ['replaced', 'نعيش في «الزهور» الآن.'],
    ['replaced', 'اليوم «البـــرق» بخير.'],
    ['replaced', 'اليوم «البَرْق» بخير.'],
    ['refused', 'היום «כוכבית» בסדר.'],
    ['refused', 'היום «לכוכבית» טוב.'],
    ['refused', 'היום «שהכוכבית» באה.'],
    ['replaced', 'אמרנו «לנועה» לחכות.'],
    ['replaced', 'אמרנו «לגלבוע» לחכות.'],
  ],
}
