// Package work reckons the hours a build takes and lays them out in days.
//
// # Hours
//
// The work is what the solved silos say: metres sawn, holes bored, screws
// driven, beads run. Each amount is multiplied by the job's own minutes for one
// unit (Rates) and so gives the time of the first silo. Later ones go quicker by
// the learning curve (Factor, Sum). Set-up is done once a kind and is not
// learned. All default minutes are common practice, no source.
//
// # Days
//
// Plan lays the same minutes out in days. Its model of the shop is plain:
//
//   - A drum silo and a pipe silo each go through their stages in the order of
//     the build steps. Silos pass each stage in the order of their numbers.
//   - The crew works as one: what one person does in p minutes, p people do in
//     one. There are never more people at work than there are silos.
//   - Every silo takes the average of the learning curve, so that the days add
//     up to the hours.
//   - A stage of a silo that was begun is ended before another is begun. What
//     the evening breaks off goes on in the morning; beads and cemented joints
//     are begun only when they are ended the same day, unless one person is at
//     them for more than a day.
//   - Sealant, cement and resin set by the clock, through the night; the days
//     follow each other without a day of rest.
//   - A pipe silo holds a clamp from when its screen is begun until the clamp
//     has been taken off and the screen trimmed.
//
// The package is pure: no files, no clock, the same answer each time. Money is
// not its business: labour costs hours × the job's rate.
package work
