// In a browser stands for the YAML reader that gray-matter brings, and whose place front-matter.ts takes.
module.exports = { safeLoad() {}, safeDump() {} }
