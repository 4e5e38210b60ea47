/** A worker thread: makes the horses that it is handed, one after the other. */
import { parentPort, workerData } from 'node:worker_threads'
import { disk } from '../../build/disk/real-disk.ts'
import { answerJobs } from '../../build/pool.ts'
import { editions } from '../../editions/index.ts'
import type { SitePaths } from './horse-job.ts'
import { horseWork } from './horse-work.ts'
import { openPageTools } from './page-tools.ts'

const paths: SitePaths = workerData
if (parentPort) answerJobs(parentPort, horseWork(disk, paths, editions, openPageTools()))
