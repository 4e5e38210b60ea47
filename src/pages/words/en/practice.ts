/** All wording of the practice edition. */
import { chart } from './practice/chart.ts'
import { front } from './practice/front.ts'
import { horse } from './practice/horse.ts'
import { measures } from './practice/measures.ts'
import { next } from './practice/next.ts'
import { office } from './practice/office.ts'
import { problem } from './practice/problem.ts'
import { sheets } from './practice/sheets.ts'
import { trend } from './practice/trend.ts'
import { visit } from './practice/visit.ts'

export const practice = { chart, front, horse, measures, next, office, problem, sheets, trend, visit }
