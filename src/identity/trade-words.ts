/** Words and abbreviations of the trade that are never taken for anybody's name or initials. */

const list = (words: string): ReadonlySet<string> => new Set(words.trim().split(/\s+/))

/** Written with or without full stops: `LF`, `L.F.`. */
const abbreviations = list(`
LF RF LH RH FL FR HL HR LR RR LL RL NF OF NH OH FF HH BF BH NB PS PM AM EG IE OK VS CA CF NO ID IQ
P1 P2 P3 PI PII PIII DP AP LM PA DIP PIP MCP MTP DDFT SDFT CDET SL ALDDFT HPA HLX PPID EMS IR WLD NSAID NSAIDS
MRI CT US XR TL TA HA HL HB CB FW FL SD SW TH TW BW BCS CNS TB WB QH ISH ID TBX DNA ACTH TRH GI IV IM PO SC SID BID
AAEP UK EU USA GB EN DIY PT AI AB CBC WBC RBC RF HR RR TPR VET DVM BVSC RCVS CM MM KG LB IN FT HP HPW NSC WSC MG ZN CU FE SE
MSM DMSO EPSOM LA LI MH LHS RHS ROM BPM GPS RSPCA A&E DPO DLPMO NA AC TO OC PC
`)

/** Whether capitals are an abbreviation of the trade or of common use; full stops and spaces do not count. */
export const isAbbreviation = (text: string): boolean =>
  abbreviations.has(text.replace(/[.\s]/g, '').toUpperCase())

/** Words of the foot itself. As a part of somebody's name they are searched after a title only. */
export const bodyWords = list(`
heel heels toe toes frog frogs wall walls sole soles bar bars hoof hooves foot feet quarter quarters nail nails
coronet hairline bulb bulbs sulcus pastern fetlock hock cannon knee leg legs shoulder back limb fore fores front hind
horn lamina laminae line ring rings crack flare chip abscess thrush pillar pillars shoe shoes boot boots rasp knife nipper
`)

/** What a single letter after them counts or names: grade A, vitamin B, point C. */
export const letteredThings = list(`
grade type class vitamin point figure fig plan part side group size stage zone section option method case phase level
hepatitis strain appendix table panel step letter line band form version schedule image view picture photo drug factor
`)

/** Small words and titles that make up a name without naming anybody. */
export const particles = list(`
the of and de van von der den del della di da du la le les el al bin ibn ben af av ter ten zu zum zur st san santa saint
mr mrs ms miss mx dr sir lady lord prof rev fr jr sr in on at by to a an o an
`)

/** What a place is, without saying which. */
export const placeWords = list(`
yard farm barn stable stables livery house lane road street mill hill field fields meadow paddock paddocks wood woods
green park moor hospital clinic practice show stud riding school centre center club arena track trail grange lodge
cottage court hall manor ranch equestrian equine veterinary surgery village town
`)
