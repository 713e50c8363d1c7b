# Reference values for sampling plans, from R's own distributions.
# Run: Rscript scouting.R > scouting.json
num <- function(x) if (is.numeric(x)) sprintf("%.17g", x) else sprintf('"%s"', x)
object <- function(...) {
  fields <- c(...)
  paste0("{", paste(sprintf('"%s":%s', names(fields), fields), collapse = ","), "}")
}

# A plan as an absorbing chain on (units, total): stop where the product of likelihood ratios passes Wald's bounds.
characteristic <- function(mass, m0, m1, alpha, beta, mean, smallest, largest, top) {
  log_ratio <- function(total, n) {
    # The ratio depends on the total alone, so any counts that add up to it will do.
    first <- log(mass(0, m1) / mass(0, m0)); each <- log(mass(1, m1) / mass(1, m0)) - first
    n * first + total * each
  }
  p <- c(1, rep(0, top)); below <- above <- average <- 0
  totals <- 0:top
  for (n in 1:largest) {
    average <- average + sum(p)
    step <- mass(totals, mean)
    p <- sapply(totals, function(total) sum(p[1:(total + 1)] * rev(step[1:(total + 1)])))
    if (n < smallest) next
    ratio <- log_ratio(totals, n)
    up <- ratio >= log((1 - beta) / alpha) - 1e-12; down <- ratio <= log(beta / (1 - alpha)) + 1e-12
    below <- below + sum(p[down]); above <- above + sum(p[up])
    p[up | down] <- 0
  }
  object(mean = num(mean), below = num(below), above = num(above), undecided = num(sum(p)), averageSamples = num(average))
}
plan <- function(kind, k, mass, m0, m1, alpha, beta, means, smallest, largest, top) object(
  kind = num(kind), k = num(k), m0 = num(m0), m1 = num(m1), alpha = num(alpha), beta = num(beta), minSamples = num(smallest),
  maxSamples = num(largest), at = paste0("[", paste(sapply(means, function(mean)
    characteristic(mass, m0, m1, alpha, beta, mean, smallest, largest, top)), collapse = ",\n"), "]"))

cat(object(
  generator = num(paste("R", getRversion())),
  plans = paste0("[", paste(c(
    plan("negative-binomial", 1.2, function(y, m) dnbinom(y, size = 1.2, mu = m), 0.5, 1.5, 0.1, 0.1, c(0.2, 0.5, 0.9, 1.5, 3), 5, 40, 400),
    plan("poisson", 0, function(y, m) dpois(y, m), 1, 2, 0.05, 0.1, c(0.5, 1, 1.4, 2, 4), 1, 30, 300),
    plan("binomial", 0, function(y, p) dbinom(y, 1, p), 0.05, 0.15, 0.1, 0.1, c(0.01, 0.05, 0.1, 0.15, 0.4), 10, 80, 80)
  ), collapse = ",\n"), "]")
), "\n", sep = "")
