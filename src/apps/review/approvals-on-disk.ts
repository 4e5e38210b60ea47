/** `approvals.txt` of a casebook on the disk. */
import { join } from 'node:path'
import { changeFile, modes, readIfThere } from '../../build/disk/whole-file.ts'
import {
  type Approval,
  approvalsFile,
  printApprovals,
  readApprovals,
  withApprovals,
} from '../../identity/approvals.ts'

/** @throws UserError when the disk refuses */
export const approvalsIn = (casebook: string) => readApprovals(readIfThere(join(casebook, approvalsFile)))

/**
 * Writes what a person has decided, before anything else is asked.
 * @param isApproved false takes approvals back
 * @throws UserError when the disk refuses
 */
export function decide(casebook: string, given: readonly Approval[], isApproved: boolean): void {
  changeFile(join(casebook, approvalsFile), modes.everyone, (text) => ({
    text: printApprovals(withApprovals(readApprovals(text), given, isApproved)),
    made: null,
  }))
}
