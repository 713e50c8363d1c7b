# Reference values for the gamma function's relatives and the beta distribution.
# Run: Rscript special-functions.R > special-functions.json
num <- function(x) if (is.nan(x)) "null" else sprintf("%.17g", x)
rows <- function(...) {
  table <- list(...)
  line <- function(i) paste0("{", paste0('"', names(table), '":', sapply(table, function(column) num(column[i])), collapse = ","), "}")
  paste0("[\n", paste(sapply(seq_along(table[[1]]), line), collapse = ",\n"), "\n]")
}

x <- c(1e-6, 0.001, 0.1, 0.5, 0.99, 1, 1.2, 1.4616, 1.9, 2, 2.5, 3.7, 7, 11.99, 12, 12.01, 25, 100, 1234.5, 1e5, 1e9)
shapes <- c(0.5, 1, 2.5, 10, 77.5, 1000, 1e5)
p <- c(1e-6, 0.001, 0.1, 0.5, 0.9, 0.999, 1 - 1e-6)
grid <- expand.grid(p = p, a = shapes, b = shapes)
quantile <- with(grid, qbeta(p, a, b))
# The distribution function is asked at the quantile as it is stored, so it need not give p back exactly.
below <- with(grid, pbeta(quantile, a, b))

student <- expand.grid(level = c(0.5, 0.8, 0.95, 0.999), df = c(1, 2.5, 10, 300))
normal <- c(0.5, 0.8, 0.95, 0.999)

cat("{\n")
cat('"generator":"R ', as.character(getRversion()), '",\n', sep = "")
cat('"gamma":', rows(x = x, logGamma = lgamma(x), digamma = digamma(x), trigamma = trigamma(x)), ",\n", sep = "")
cat('"student":', with(student, rows(level = level, df = df, limit = qt((1 + level) / 2, df))), ",\n", sep = "")
cat('"normal":', rows(level = normal, limit = qnorm((1 + normal) / 2)), ",\n", sep = "")
cat('"beta":', rows(p = grid$p, a = grid$a, b = grid$b, quantile = quantile, below = below), "\n}\n", sep = "")
