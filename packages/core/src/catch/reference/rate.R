# Reference values for catch rates, the gamma distribution and the odds of a beta variate.
# Rscript rate.R > rate.json        (base R only)

number <- function(x) {
  text <- sprintf("%.17g", x)
  text[is.na(x)] <- "null"
  text
}
row <- function(...) {
  values <- list(...)
  paste0("{", paste0('"', names(values), '":', vapply(values, number, ""), collapse = ","), "}")
}
rows <- function(cases, f) paste0("[\n", paste(apply(cases, 1, function(case) do.call(f, as.list(case))), collapse = ",\n"), "\n]")

# Quantile of w / (1 - w) for w ~ Beta(a, b), taken from the end that keeps its digits.
beta_odds <- function(p, a, b) {
  w <- qbeta(p, a, b)
  rest <- qbeta(p, b, a, lower.tail = FALSE)
  ifelse(w < 0.5, w / (1 - w), (1 - rest) / rest)
}

# Moths in trap-nights: count over `visits` visits whose nights sum to `nights` and whose squares sum to `squares`.
sums <- rbind(
  c(0, 1, 1, 1), c(0, 7, 7, 7), c(0, 9, 41, 3), c(1, 1, 1, 1), c(1, 7, 49, 1), c(3, 7, 25, 2), c(9, 2, 2, 2),
  c(9, 2, 4, 1), c(50, 7, 7, 7), c(40, 28, 196, 4), c(400, 7, 17, 3), c(5, 280, 1960, 40), c(1200, 90, 300, 30),
  c(25000, 14, 50, 4), c(300000, 2800, 10000, 800)
)
rate_cases <- do.call(rbind, lapply(c(NA, 0.3, 1, 2.5, 40), function(k) cbind(sums, k)))
colnames(rate_cases) <- c("count", "trapNights", "sumSquaredNights", "visits", "k")

# Jeffreys' shape, but where nothing was caught the one whose one-sided limit is exact.
shape_of <- function(count) if (count == 0) 1 else count + 0.5

rate <- function(count, trapNights, sumSquaredNights, visits, k) {
  level <- 0.8
  tails <- if (count == 0) c(0, level) else c((1 - level) / 2, (1 + level) / 2)
  threshold <- max(count, 0.7) / trapNights * 1.15
  shape <- shape_of(count)
  if (is.na(k)) {
    q <- qgamma(tails, shape, trapNights)
    above <- pgamma(threshold, shape, trapNights, lower.tail = FALSE)
  } else {
    size <- k * trapNights^2 / sumSquaredNights
    q <- size * beta_odds(tails, shape, size) / trapNights
    above <- pbeta(size / (size + threshold * trapNights), size, shape)
  }
  row(
    count = count, trapNights = trapNights, sumSquaredNights = sumSquaredNights, visits = visits, k = k,
    low = q[1], high = q[2], threshold = threshold, above = above
  )
}

# The same probability with no use of conjugacy: the posterior density of the rate, integrated.
# Jeffreys' prior for a negative binomial mean m of known size is 1 / sqrt(m (1 + m / size)).
integrated <- function(count, nights, k, threshold) {
  size <- k * nights
  density <- function(rate) {
    m <- rate * nights
    dnbinom(count, size = size, mu = m) / sqrt(m * (1 + m / size))
  }
  # With rate = s^2 the prior's pole at 0 is gone.
  by_root <- function(s) density(s^2) * 2 * s
  area <- function(from, to) integrate(by_root, from, to, rel.tol = 1e-11, subdivisions = 2000)$value
  scale <- sqrt((count + 1) / nights)
  body <- area(0, sqrt(threshold))
  tail <- area(sqrt(threshold), sqrt(threshold) + 3 * scale) + area(sqrt(threshold) + 3 * scale, Inf)
  row(count = count, nights = nights, k = k, threshold = threshold, above = tail / (body + tail))
}
integrated_cases <- rbind(
  c(3, 7, 1, 0.5), c(9, 2, 1, 6), c(50, 7, 2.5, 10), c(70, 7, 0.5, 13), c(5, 14, 4, 0.2)
)
colnames(integrated_cases) <- c("count", "nights", "k", "threshold")

# The rate where ln k is normal about ln 3 with standard deviation 0.8, integrated over k by R.
mixed <- function(count, trapNights, sumSquaredNights, visits) {
  shape <- shape_of(count)
  above <- function(rate) {
    at <- function(log_k) {
      size <- exp(log_k) * trapNights^2 / sumSquaredNights
      dnorm(log_k, log(3), 0.8) * pbeta(size / (size + rate * trapNights), size, shape)
    }
    integrate(at, log(3) - 8 * 0.8, log(3) + 8 * 0.8, rel.tol = 1e-10, subdivisions = 2000)$value
  }
  limit <- function(p) {
    start <- max(count, 0.5) / trapNights
    exp(uniroot(function(x) above(exp(x)) - (1 - p), log(start) + c(-8, 8), tol = 1e-11)$root)
  }
  low <- if (count == 0) 0 else limit(0.1)
  high <- limit(if (count == 0) 0.8 else 0.9)
  threshold <- max(count, 0.7) / trapNights * 1.15
  row(
    count = count, trapNights = trapNights, sumSquaredNights = sumSquaredNights, visits = visits,
    low = low, high = high, threshold = threshold, above = above(threshold)
  )
}
mixed_cases <- sums[c(1, 2, 3, 5, 6, 7, 10, 11, 13), ]
colnames(mixed_cases) <- c("count", "trapNights", "sumSquaredNights", "visits")

# What stretches of four visits tell of k: level (prior flat) and slope (normal, sd 0.15) of ln moths a night integrated
# over on a grid, the stretches multiplied, ln k normal about ln 3 with sd 0.8; mean and sd of ln k. The stretches are drawn
# here, with k 1.5 and flights that rise and fall.
set.seed(20261126)
at <- c(-6, -2, 2, 6)
stretches <- t(sapply(1:12, function(i) {
  rnbinom(4, size = 1.5, mu = 4 * exp(runif(1, 0.5, 2.5) - 1 + rnorm(1, 0, 0.1) * at))
}))
stretches <- stretches[rowSums(stretches) >= 5, ]
log_ks <- seq(log(3) - 4, log(3) + 4, by = 0.05)
level <- seq(-5, 7, by = 0.05)
slope <- seq(-0.75, 0.75, by = 0.01)
grid <- expand.grid(level = level, slope = slope)
log_marginal <- function(counts, k) {
  terms <- dnorm(grid$slope, 0, 0.15, log = TRUE)
  for (i in 1:4) terms <- terms + dnbinom(counts[i], size = k, mu = 4 * exp(grid$level + grid$slope * at[i]), log = TRUE)
  max(terms) + log(sum(exp(terms - max(terms))))
}
posterior <- sapply(log_ks, function(log_k) {
  sum(apply(stretches, 1, log_marginal, k = exp(log_k))) + dnorm(log_k, log(3), 0.8, log = TRUE)
})
weight <- exp(posterior - max(posterior)) / sum(exp(posterior - max(posterior)))
mean_log <- sum(weight * log_ks)
dispersion <- paste0(
  '{"stretches":[', paste(apply(stretches, 1, function(one) paste0("[", paste(one, collapse = ","), "]")), collapse = ","),
  '],"meanLogK":', number(mean_log), ',"sdLogK":', number(sqrt(sum(weight * (log_ks - mean_log)^2))), "}"
)

gamma_cases <- expand.grid(
  a = c(0.5, 1.5, 2.5, 9.5, 10.5, 100.5, 12345.5, 1e6 + 0.5), p = c(1e-6, 0.025, 0.1, 0.5, 0.8, 0.9, 0.975, 1 - 1e-6)
)
gamma_row <- function(a, p) {
  x <- qgamma(p, a)
  row(a = a, p = p, x = x, nearby = 1.01 * x, pNearby = pgamma(1.01 * x, a))
}

beta_cases <- expand.grid(
  a = c(0.5, 3.5, 40.5, 1000.5, 1e6 + 0.5), b = c(0.2, 1, 2, 14, 300, 1e5), p = c(0.001, 0.1, 0.5, 0.8, 0.9, 0.999)
)
beta_row <- function(a, b, p) {
  odds <- beta_odds(p, a, b)
  nearby <- 1.03 * odds
  p_nearby <- if (nearby < 1) pbeta(nearby / (1 + nearby), a, b) else pbeta(1 / (1 + nearby), b, a, lower.tail = FALSE)
  row(a = a, b = b, p = p, odds = odds, nearby = nearby, pNearby = p_nearby)
}

cat(
  '{"made":"', R.version.string, '",\n',
  '"rates":', rows(rate_cases, rate), ",\n",
  '"integrated":', rows(integrated_cases, integrated), ",\n",
  '"mixed":', rows(mixed_cases, mixed), ",\n",
  '"dispersion":', dispersion, ",\n",
  '"gamma":', rows(as.matrix(gamma_cases), gamma_row), ",\n",
  '"betaOdds":', rows(as.matrix(beta_cases), beta_row), "}\n",
  sep = ""
)
