/**
 * Restricted maximum likelihood against R: nlme 3.1.162 and lme4 1.1.31 on R 4.2.2, on simulated toe lengths of six
 * feet, eight trims each, 1.25 months apart; limma 3.54.1 for the moments of variances. The commands were, with a file
 * of columns course, t (month of the trim), d (months since it: 0 or 1.25), stage (A after the trim, B on the next
 * arrival), trim (one level a trim of a course) and y:
 *
 *     m <- lmer(y ~ 0 + course + course:t + course:d + (1|trim), d, REML = TRUE,
 *               control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10)))
 *     as.data.frame(VarCorr(m))$sdcor; logLik(m); sqrt(diag(vcov(m)))[7:12]; fixef(m)[7:12]
 *     n <- lme(y ~ 0 + course + course:t + course:d, random = ~1|trim, weights = varIdent(form = ~1|stage), data = d,
 *              method = "REML", control = lmeControl(msTol = 1e-12, tolerance = 1e-10, opt = "optim", reltol = 1e-14))
 *     n$sigma; VarCorr(n); coef(n$modelStruct$varStruct, unconstrained = FALSE); logLik(n)
 *     f <- fitFDist(s2, df); f$df2; trigammaInverse(c(0.05, 0.5, 1, 3))
 *
 * nlme lets the readings of stage B scatter by a factor of their own; with all gaps alike that is what w says:
 * (factor e)^2 = e^2 + 1.25 w^2. The belief in growth is flat here, and nothing is believed of the scatter.
 */
import { describe, expect, it } from 'vitest'
import { fitCourse, slopeSd } from '../../src/trend/model/fit.ts'
import { priorFreedom, trigammaInverse } from '../../src/trend/model/heterogeneity.ts'
import { objective } from '../../src/trend/model/learn.ts'
import { minimise } from '../../src/trend/model/minimise.ts'
import { bothStages } from '../trend/model/build-course.ts'

const gap = 1.25

const toes = [
  {
    left: [82.73, 81.46, 90.18, 84.56, 85.93, 86.51, 89.29, 90.09],
    back: [92.43, 90.79, 91.39, 93.28, 92.28, 98.69, 102.06, null],
  },
  {
    left: [86.57, 88.58, 81.44, 82.27, 89.52, 83.28, 86.99, 89.48],
    back: [88.05, 90.59, 95.15, 94.55, 95.22, 95.09, 92.5, null],
  },
  {
    left: [82.81, 84.11, 86.09, 86.08, 88.59, 85.96, 92.03, 88.98],
    back: [94.53, 95.86, 99.87, 94.63, 95.64, 93.69, 93.94, null],
  },
  {
    left: [87.25, 88.22, 89.59, 92.65, 94.78, 90.83, 98.05, 94.7],
    back: [95.31, 101.72, 99.27, 105.5, 104.51, 99.61, 101.75, null],
  },
  {
    left: [82.96, 84.67, 88.84, 91.67, 90.8, 91.19, 95.6, 94.53],
    back: [93.84, 96.37, 105.18, 105.99, 96.02, 103.35, 103.83, null],
  },
  {
    left: [83.68, 85.99, 84.94, 84.57, 82.8, 88.81, 82.22, 87.15],
    back: [94.18, 95.8, 93.85, 100.02, 95.26, 103.95, 92.83, null],
  },
]

const flat = { mean: 0, variance: 1e12 }
const times = Array.from({ length: 8 }, (_, i) => gap * i)
const courses = toes.map(({ left, back }) => bothStages(times, left, back, flat))
const readings = toes.flatMap(({ left, back }) => [...left, ...back]).filter((value) => value !== null)
const nothing = 1e-6

/** The engine leaves constants out; with a belief of variance v in growth log|K| is what R has. */
const logLikelihood = (lowest: number): number =>
  -lowest - ((readings.length - 3 * toes.length) / 2) * Math.log(2 * Math.PI)

describe('lme4: readings and trims alone', () => {
  const cost = ([e = 0, u = 0]: readonly number[]) =>
    objective(courses, [], { e: Math.exp(e), u: Math.exp(u), w: nothing })
  const { at } = minimise(cost, [0, 0], 1e-9)
  const [e = Number.NaN, u = Number.NaN] = at.map(Math.exp)

  it('has its log-likelihood', () => expect(logLikelihood(cost(at))).toBeCloseTo(-205.358113409, 6))

  it('has its standard deviations of u and e', () => {
    expect(u).toBeCloseTo(1.18903429679, 4)
    expect(e).toBeCloseTo(2.64159280777, 5)
  })

  it('has its slopes and their standard errors', () => {
    const variances = { e: e ** 2, u: u ** 2, w: nothing ** 2 }
    // The variances are taken as told: s2 is 1.
    const fits = courses.map((course) => fitCourse(course, { variances, worth: 1e12 }))
    const slopes = [
      0.979781685395, 0.412934342097, 0.371074258553, 0.837258708493, 1.201911515269, 0.25136348264,
    ]
    for (const [i, slope] of slopes.entries()) {
      const fit = fits[i]
      expect(fit?.slope).toBeCloseTo(slope, 5)
      expect(fit && slopeSd(fit)).toBeCloseTo(0.294497952559, 5)
    }
  })
})

describe('nlme: readings, trims and growth', () => {
  const cost = ([e = 0, u = 0, w = 0]: readonly number[]) =>
    objective(courses, [], { e: Math.exp(e), u: Math.exp(u), w: Math.exp(w) })
  const { at } = minimise(cost, [0, 0, 0], 1e-9)
  const [e = Number.NaN, u = Number.NaN, w = Number.NaN] = at.map(Math.exp)

  it('has its log-likelihood', () => expect(logLikelihood(cost(at))).toBeCloseTo(-203.341236138, 6))

  it('has its standard deviations', () => {
    expect(e).toBeCloseTo(2.07253502628, 3)
    expect(u).toBeCloseTo(1.18798768985, 3)
    expect(Math.sqrt(e ** 2 + gap * w ** 2) / e).toBeCloseTo(1.5288642365, 3)
  })
})

describe('limma: how much variances differ', () => {
  const variances = [0.8, 1.9, 0.4, 3.1, 1.2, 0.7, 2.2, 0.95, 5, 0.3, 1.1, 1.6]
  const freedoms = [3, 5, 8, 4, 6, 9, 12, 7, 3, 10, 5, 6]

  it("has fitFDist's degrees of freedom to seven figures", () => {
    const residuals = variances.map((variance, i) => {
      const df = freedoms[i] ?? Number.NaN
      return { rss: variance * df, df }
    })
    expect(Math.abs(priorFreedom(residuals) / 7.98348527203 - 1)).toBeLessThan(1e-7)
  })

  it.each([
    [0.05, 20.495835239155],
    [0.5, 2.459952948352],
    [1, 1.426255120215],
    [3, 0.675478105281],
  ])('has trigammaInverse of %f to seven figures', (y, x) =>
    expect(Math.abs(trigammaInverse(y) / x - 1)).toBeLessThan(1e-7),
  )
})
