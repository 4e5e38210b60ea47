/** The feet that the demo casebook shows, near to what their visits read with gauge and tape. */
import type { Foot } from '../src/hoof/feet.ts'
import type { PhotoView } from '../src/hoof/landmarks.ts'
import { type Camera, type DrawnFoot, drawSide, drawSole } from './drawn-foot.ts'

export interface DemoPicture {
  readonly horse: string
  readonly visit: string
  /** Path in the horse's folder. */
  readonly file: string
  readonly foot: Foot
  readonly view: PhotoView
  readonly stage: 'before' | 'after'
  readonly drawn: DrawnFoot
}

/** A camera that stands a little elsewhere each time, as cameras do. */
const camera = (
  mmPerPixel: number,
  turned: number,
  toe: readonly [number, number],
  mirrored = false,
): Camera => ({ width: 1280, height: 960, mmPerPixel, turned, toe, mirrored })

const samphire = { horse: 'samphire', stage: 'before' } as const
const whimbrel = { horse: 'whimbrel', stage: 'before' } as const
const [early, late] = ['2025-12-13', '2026-10-24'] as const

export const demoPictures: readonly DemoPicture[] = [
  {
    ...samphire,
    visit: early,
    file: `photos/lf-side-${early}.png`,
    foot: 'LF',
    view: 'lateral',
    drawn: drawSide(
      {
        toeAngle: 44.5,
        wallLength: 102.5,
        strip: null,
        heelAngle: 35.5,
        heelLength: 43.5,
        bearingLength: 147,
        pasternAngle: 53,
      },
      camera(0.26, 1.4, [250, 700]),
    ),
  },
  {
    ...samphire,
    visit: early,
    file: `photos/lf-sole-${early}.png`,
    foot: 'LF',
    view: 'solar',
    drawn: drawSole(
      { bearingLength: 147, width: 130.5, frogLength: 86, frogWidth: 57, breakover: 53, toeToFrogTip: 59 },
      { ...camera(0.21, 2, [480, 130]), width: 1080, height: 1000 },
    ),
  },
  {
    ...samphire,
    visit: early,
    file: `photos/rf-side-${early}.png`,
    foot: 'RF',
    view: 'lateral',
    drawn: drawSide(
      {
        toeAngle: 44,
        wallLength: 107,
        strip: null,
        heelAngle: 33.5,
        heelLength: 39,
        bearingLength: 153.5,
        pasternAngle: 52,
      },
      camera(0.27, -0.8, [1030, 690], true),
    ),
  },
  {
    ...samphire,
    visit: late,
    file: `photos/lf-side-${late}.png`,
    foot: 'LF',
    view: 'lateral',
    drawn: drawSide(
      {
        toeAngle: 51,
        wallLength: 93,
        strip: null,
        heelAngle: 41,
        heelLength: 46,
        bearingLength: 137,
        pasternAngle: 53.5,
      },
      camera(0.24, -1.6, [300, 760]),
    ),
  },
  {
    ...samphire,
    visit: late,
    file: `photos/lf-sole-${late}.png`,
    foot: 'LF',
    view: 'solar',
    drawn: drawSole(
      { bearingLength: 138.5, width: 130, frogLength: 87, frogWidth: 63, breakover: 41, toeToFrogTip: 49 },
      { ...camera(0.19, -1.5, [500, 150]), width: 1080, height: 1000 },
    ),
  },
  {
    ...samphire,
    visit: late,
    file: `photos/rf-side-${late}.png`,
    foot: 'RF',
    view: 'lateral',
    drawn: drawSide(
      {
        toeAngle: 47.5,
        wallLength: 96.5,
        strip: null,
        heelAngle: 34.5,
        heelLength: 43.5,
        bearingLength: 144.5,
        pasternAngle: 53,
      },
      camera(0.25, 1.2, [1060, 740], true),
    ),
  },
  {
    ...whimbrel,
    visit: '2025-11-22',
    file: 'photos/lf-side-2025-11-22.png',
    foot: 'LF',
    view: 'lateral',
    drawn: drawSide(
      {
        toeAngle: 43,
        wallLength: 92,
        strip: null,
        heelAngle: 38.5,
        heelLength: 42.5,
        bearingLength: 118,
        pasternAngle: 52.5,
      },
      camera(0.23, 0.9, [280, 740]),
    ),
  },
  {
    ...whimbrel,
    visit: '2026-10-10',
    file: 'photos/lf-side-2026-10-10.png',
    foot: 'LF',
    view: 'lateral',
    drawn: drawSide(
      {
        toeAngle: 49,
        wallLength: 26.5,
        strip: { angle: 54.5, length: 61.5 },
        heelAngle: 41.5,
        heelLength: 41.5,
        bearingLength: 112.5,
        pasternAngle: 54.5,
      },
      camera(0.215, -1.1, [330, 730]),
    ),
  },
]
