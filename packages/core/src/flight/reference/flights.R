# Reference values for flights on the heat axis.
# Rscript flights.R > flights.json        (R with MASS and mixtools)
suppressMessages({ library(MASS); library(mixtools) })
set.seed(631)

numbers <- function(x) paste0("[", paste(sprintf("%.15g", x), collapse = ","), "]")

# The penalised likelihood written out anew, in peaks rather than gaps, and maximised by general-purpose optimisers.
# Beliefs, on the heat axis in degrees F: see flight-prior.ts.
expected <- function(theta, data) {
  flights <- (length(theta) - 1) / 3
  mu <- exp(theta[1]) * data$nights
  for (g in seq_len(flights)) {
    at <- 1 + 3 * (g - 1)
    width <- exp(theta[at + 3])
    mu <- mu + exp(theta[at + 1]) * (pnorm(data$to, theta[at + 2], width) - pnorm(data$from, theta[at + 2], width))
  }
  mu
}
density <- function(data, k, mu) if (is.na(k)) dpois(data$count, mu, log = TRUE) else dnbinom(data$count, size = k, mu = mu, log = TRUE)
objective <- function(theta, data, k) {
  flights <- (length(theta) - 1) / 3
  value <- sum(density(data, k, pmax(expected(theta, data), 1e-300)))
  if (flights == 0) return(value)
  peaks <- theta[3 * seq_len(flights)]
  if (any(diff(peaks) <= 0)) return(-1e10)
  total <- sum(data$count)
  beyond <- pmax(peaks - max(data$to), 0) + pmax(min(data$from) - peaks, 0)
  value -
    0.5 * ((theta[1] - log(0.05 * total / sum(data$nights))) / 1.5)^2 -
    0.5 * sum(((theta[3 * seq_len(flights) - 1] - log(total + 1)) / 2)^2) -
    0.5 * sum(((theta[3 * seq_len(flights) + 1] - log(147)) / 0.4)^2) -
    0.5 * sum(((log(diff(peaks)) - log(1040)) / 0.3)^2) -
    0.5 * sum((beyond / (2 * 147))^2)
}
best <- function(start, data, k) {
  scale <- ifelse(seq_along(start) %% 3 == 0, 100, 1)
  control <- list(fnscale = -1, reltol = 1e-15, maxit = 20000, parscale = scale)
  fit <- optim(start, objective, data = data, k = k, method = "Nelder-Mead", control = control)
  for (i in 1:20) fit <- optim(fit$par, objective, data = data, k = k, method = if (i %% 2) "BFGS" else "Nelder-Mead", control = control)
  bic <- -2 * fit$value + length(start) * log(nrow(data))
  curves <- matrix(fit$par[-1], nrow = 3)
  sprintf(
    '{"flights":%d,"bic":%.12g,"stray":%.12g,"moths":%s,"peak":%s,"width":%s}',
    ncol(curves), bic, exp(fit$par[1]), numbers(exp(curves[1, ])), numbers(curves[2, ]), numbers(exp(curves[3, ]))
  )
}

season <- function(name, k, peaks, widths, moths, starts) {
  heat <- cumsum(pmax(0, 4 + 18 * sin(pi * (1:182 + 10) / 200)^2 + rnorm(182, 0, 4)))
  nights <- rep(c(3, 4), 26)
  ends <- cumsum(nights)
  data <- data.frame(from = c(0, heat[ends])[1:52], to = heat[ends], nights = nights)
  theta <- c(log(0.05), as.vector(rbind(log(moths), peaks, log(widths))))
  mu <- expected(theta, data)
  data$count <- if (is.na(k)) rpois(52, mu) else rnbinom(52, size = k, mu = mu)
  data <- data[-c(7, 20), ] # two visits without information
  fits <- vapply(starts, function(at) best(c(log(0.05), as.vector(rbind(log(moths[1]), at, log(147)))), data, k), "")
  sprintf(
    '{"name":"%s","k":%s,"from":%s,"to":%s,"nights":%s,"count":%s,\n "fits":[%s]}',
    name, if (is.na(k)) "null" else k, numbers(data$from), numbers(data$to), numbers(data$nights), numbers(data$count),
    paste(fits, collapse = ",\n  ")
  )
}
seasons <- c(
  season("two flights, over-dispersed", 2, c(500, 1550), c(120, 150), c(150, 400), list(800, c(500, 1500))),
  season("one flight, Poisson", NA, 900, 160, 120, list(900)),
  season("three flights, over-dispersed", 4, c(400, 1300, 2200), c(110, 140, 150), c(80, 200, 150), list(c(600, 1600), c(400, 1300, 2100)))
)

# Moths at their own heat, by EM for a normal mixture; counted per night for the fit that is tested.
own <- sort(c(rnorm(1200, 620, 115), rnorm(1800, 1680, 150)))
sink(tempfile())
em <- normalmixEM(own, lambda = c(0.5, 0.5), mu = c(600, 1600), sigma = c(130, 130), epsilon = 1e-12, maxit = 5000)
sink()
edges <- seq(0, 2400, by = 12)
counts <- hist(own[own > 0 & own < 2400], breaks = edges, plot = FALSE)$counts
mixture <- sprintf(
  '{"width":12,"count":%s,\n "moths":%s,"peak":%s,"sigma":%s}',
  numbers(counts), numbers(em$lambda * length(own)), numbers(em$mu), numbers(em$sigma)
)

z <- c(-30, -8, -7.05, -3, -1.2, -0.1, 0, 0.7, 2.5, 6, 9)
cat(
  '{"made":"', R.version.string, ", MASS ", format(packageVersion("MASS")), ", mixtools ", format(packageVersion("mixtools")), '",\n',
  '"normal":{"z":', numbers(z), ',"p":', numbers(pnorm(z)), "},\n",
  '"seasons":[\n', paste(seasons, collapse = ",\n"), "],\n",
  '"mixture":', mixture, "}\n",
  sep = ""
)
