# glm.nb on the same rows as the bench; prints milliseconds, theta and the coefficients of each run asked for on stdin.
suppressMessages(library(MASS))
rows <- read.csv(commandArgs(trailingOnly = TRUE)[1])
rows$block <- factor(rows$block)
rows$trap <- factor(rows$trap)
con <- file("stdin", "r")
while (length(readLines(con, 1)) > 0) {
  begun <- proc.time()[["elapsed"]]
  fit <- glm.nb(count ~ trap + block + lureAge + offset(log(nights)), data = rows)
  took <- (proc.time()[["elapsed"]] - begun) * 1000
  cat(took, fit$theta, sprintf("%.10g", coef(fit)), "\n")
  flush(stdout())
}
