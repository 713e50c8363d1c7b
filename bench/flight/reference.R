# Two flights fitted to each season of a CSV (season, from, to, nights, count) with optim(), from given starts.
# Rscript reference.R seasons.csv k        prints milliseconds of processor time per season
args <- commandArgs(trailingOnly = TRUE)
seasons <- split(read.csv(args[1]), ~season)
k <- as.numeric(args[2])
loss <- function(theta, data) {
  share <- function(g) pnorm(data$to, theta[3 * g], exp(theta[3 * g + 1])) - pnorm(data$from, theta[3 * g], exp(theta[3 * g + 1]))
  mu <- exp(theta[1]) * data$nights + exp(theta[2]) * share(1) + exp(theta[5]) * share(2)
  -sum(dnbinom(data$count, size = k, mu = pmax(mu, 1e-12), log = TRUE))
}
time <- system.time(for (data in seasons) {
  start <- c(log(0.1), log(100), 500, log(140), log(100), 1500, log(140))
  optim(start, loss, data = data, method = "BFGS", control = list(parscale = c(1, 1, 100, 1, 1, 100, 1), maxit = 500))
})
cat(1000 * sum(time[c("user.self", "sys.self")]) / length(seasons), "\n")
