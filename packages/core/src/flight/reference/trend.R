# Reference values for the trend of a flight: quasi-Poisson regression with one level per trap.
# Rscript trend.R > trend.json        (base R only)

numbers <- function(x) paste0("[", paste(sprintf("%.17g", x), collapse = ","), "]")

season <- function(name, ...) {
  traps <- list(...)
  data <- do.call(rbind, lapply(seq_along(traps), function(i) {
    trap <- traps[[i]]
    to <- trap$hung + cumsum(trap$nights)
    data.frame(trap = i, time = to - trap$nights / 2, nights = trap$nights, count = trap$count)
  }))
  data$trap <- factor(data$trap)
  level <- if (nlevels(data$trap) > 1) count ~ trap + time else count ~ time
  control <- glm.control(epsilon = 1e-14, maxit = 100)
  fit <- glm(level, poisson, data, offset = log(nights), control = control)
  # Fletcher 2012: Pearson's dispersion over the mean of observed / expected.
  pearson <- sum(residuals(fit, "pearson")^2) / fit$df.residual
  dispersion <- max(1, pearson / mean(data$count / fitted(fit)))
  slope <- coef(fit)[["time"]]
  # glm() keeps the weights of its last but one step; the variance is taken at the fit itself.
  x <- model.matrix(fit)
  variance <- solve(crossprod(x, x * fitted(fit)))["time", "time"]
  margin <- qt(0.9, fit$df.residual) * sqrt(dispersion * variance)
  traps_json <- vapply(traps, function(trap) {
    sprintf('{"hung":%d,"nights":%s,"count":%s}', trap$hung, numbers(trap$nights), numbers(trap$count))
  }, "")
  sprintf(
    '{"name":"%s","traps":[%s],\n "perNight":%.17g,"low":%.17g,"high":%.17g,"dispersion":%.17g}',
    name, paste(traps_json, collapse = ","), slope, slope - margin, slope + margin, dispersion
  )
}
trap <- function(hung, nights, count) list(hung = as.integer(hung), nights = nights, count = count)

seasons <- c(
  season("twice a week, rising", trap(0, c(3, 4, 3, 4, 3), c(2, 5, 9, 21, 30))),
  season("weekly, falling", trap(0, c(7, 7, 6), c(60, 31, 8))),
  season("few moths, no clear way", trap(0, c(3, 4, 3, 4), c(1, 0, 2, 1))),
  season("two traps of different levels", trap(0, c(3, 4, 3, 4), c(12, 20, 25, 50)), trap(2, c(4, 3, 5), c(1, 2, 5))),
  season("scattered far beyond Poisson", trap(0, c(2, 2, 2, 3, 2, 2), c(40, 3, 55, 9, 90, 12))),
  season("steep, with empty visits first", trap(0, c(3, 4, 3, 4), c(0, 0, 1, 40)))
)
halves <- season("all moths at the newest visit, half a moth added", trap(0, c(4, 3, 4, 3), c(0.5, 0.5, 0.5, 90.5)))

cat(
  '{"made":"', R.version.string, '",\n"seasons":[\n', paste(seasons, collapse = ",\n"), "],\n",
  '"halfAMothAdded":', halves, "}\n",
  sep = ""
)
