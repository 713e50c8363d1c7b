# Stop totals found by search over R's own distributions, without the formulas under test.
# Run: Rscript lines.R > lines.json
num <- function(x) sprintf("%.17g", x)
array <- function(x) paste0("[", paste(sapply(x, function(v) if (is.na(v)) "null" else num(v)), collapse = ","), "]")
object <- function(...) { f <- c(...); paste0("{", paste(sprintf('"%s":%s', names(f), f), collapse = ","), "}") }

# The largest total at which the likelihoods say "below" after n units, and the smallest at which they say "above".
# The total is sufficient for the mean in all three distributions, and its own distribution is R's.
totals <- function(log_mass, m0, m1, alpha, beta, n, top) {
  t <- 0:top(n); ratio <- log_mass(t, n, m1) - log_mass(t, n, m0)
  down <- t[ratio <= log(beta / (1 - alpha))]; up <- t[ratio >= log((1 - beta) / alpha)]
  c(if (length(down)) max(down) else NA, if (length(up)) min(up) else NA)
}
line <- function(kind, k, m0, m1, alpha, beta, ns, log_mass, top) {
  found <- sapply(ns, function(n) totals(log_mass, m0, m1, alpha, beta, n, top))
  object(kind = sprintf('"%s"', kind), k = num(k), m0 = num(m0), m1 = num(m1), alpha = num(alpha), beta = num(beta),
    samples = array(ns), below = array(found[1, ]), above = array(found[2, ]))
}
# The sum of n counts with dispersion k each is negative binomial with size n k.
nb <- function(k) function(t, n, m) dnbinom(t, size = n * k, mu = n * m, log = TRUE)
ns <- c(1, 5, 10, 15, 20, 24, 25, 40, 60, 100)
high <- function(n) 40 * n; each <- function(n) n

cat(object(
  generator = sprintf('"R %s"', getRversion()),
  lines = paste0("[", paste(
    line("negative-binomial", 0.8, 0.5, 2, 0.1, 0.05, ns, nb(0.8), high),
    line("negative-binomial", 1, 1 / 30, 0.1, 0.1, 0.1, ns, nb(1), high),
    line("poisson", 0, 1, 2, 0.05, 0.1, ns, function(t, n, m) dpois(t, n * m, log = TRUE), high),
    line("binomial", 0, 0.05, 0.15, 0.1, 0.1, ns, function(t, n, p) dbinom(t, n, p, log = TRUE), each),
    line("binomial", 0, 0.01, 0.1, 0.05, 0.1, ns, function(t, n, p) dbinom(t, n, p, log = TRUE), each), sep = ",\n"), "]")
), "\n", sep = "")
