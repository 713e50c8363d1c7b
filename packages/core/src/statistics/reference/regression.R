# Reference fits by R's MASS (Venables & Ripley 2002, Modern Applied Statistics with S) on the open data it carries.
# Run: Rscript regression.R > regression.json
suppressMessages(library(MASS))
tight <- glm.control(epsilon = 1e-15, maxit = 200)
alternating <- glm.control(epsilon = 1e-12, maxit = 200)

num <- function(x) if (is.numeric(x)) sprintf("%.17g", x) else sprintf('"%s"', x)
array <- function(x) if (is.null(x)) "null" else paste0("[", paste(sapply(x, num), collapse = ","), "]")
object <- function(...) {
  fields <- c(...)
  paste0("{", paste(sprintf('"%s":%s', names(fields), fields), collapse = ",\n"), "}")
}
data_of <- function(fit, trials = NULL) {
  x <- model.matrix(fit)
  y <- if (is.null(trials)) fit$y else round(fit$y * trials)
  c(
    names = array(colnames(x)), dropped = array(colnames(x)[is.na(coef(fit))]), y = array(y),
    x = paste0("[", paste(apply(x, 2, array), collapse = ",\n"), "]"), offset = array(fit$offset), trials = array(trials)
  )
}
estimates_of <- function(fit) {
  table <- summary(fit)$coefficients
  c(estimate = array(table[, 1]), standardError = array(table[, 2]), logLikelihood = num(as.numeric(logLik(fit))))
}
negative_binomial <- function(formula, data) {
  fit <- glm.nb(formula, data = data, control = alternating)
  object(data_of(fit), estimates_of(fit), theta = num(fit$theta), thetaStandardError = num(fit$SE.theta))
}
# The k that maximises likelihood less half the log-determinant of the expected information (Cox & Reid 1987).
adjusted_k <- function(formula, data) {
  height <- function(log_k) {
    fit <- glm(formula, data = data, family = negative.binomial(exp(log_k)), control = tight)
    x <- model.matrix(fit)
    information <- crossprod(x, x * (fitted(fit) / (1 + fitted(fit) / exp(log_k))))
    sum(dnbinom(fit$y, size = exp(log_k), mu = fitted(fit), log = TRUE)) - determinant(information)$modulus / 2
  }
  exp(optimize(height, c(-4, 4), maximum = TRUE, tol = 1e-8)$maximum)
}
generalised <- function(formula, data, family, trials = NULL) {
  fit <- glm(formula, data = data, family = family, control = tight)
  object(data_of(fit, trials), estimates_of(fit))
}

# Bliss & Fisher 1953, Biometrics 9:176-200: European red mites on 150 apple leaves, leaves with 0, 1, 2, ... of them.
mites <- c(70, 38, 17, 10, 9, 3, 2, 1, 0)
counts <- rep(seq_along(mites) - 1, mites)
alone <- glm.nb(counts ~ 1, control = alternating)
direct <- suppressWarnings(fitdistr(counts, "negative binomial")) # its search tries impossible values

# An invented time at risk for each pupil, only to have an offset.
observed <- within(quine, weeks <- 1 + (seq_along(Days) - 1) %% 7)
# Insurance claims scatter no more than chance alone. Factors with plain contrasts.
claims <- within(Insurance, { Group <- factor(Group, ordered = FALSE); Age <- factor(Age, ordered = FALSE) })
# Tobacco budworm moths killed out of 20 at doubling doses, by sex (Collett 1991, in Venables & Ripley 2002, 7.2).
budworm <- data.frame(ldose = rep(0:5, 2), dead = c(1, 4, 9, 13, 18, 20, 0, 2, 6, 10, 12, 16), sex = factor(rep(c("M", "F"), c(6, 6))))

cat(object(
  generator = num(paste0("R ", getRversion(), ", MASS ", packageVersion("MASS"))),
  mites = object(
    frequencies = array(mites), mean = num(mean(counts)), meanStandardError = num(direct$sd[["mu"]]), k = num(alone$theta),
    kStandardError = num(alone$SE.theta), logLikelihood = num(as.numeric(logLik(alone)))
  ),
  quine = negative_binomial(Days ~ Eth + Sex + Age + Lrn, quine),
  quineTwoWay = negative_binomial(Days ~ (Eth + Sex + Age + Lrn)^2, quine),
  quineAdjustedK = num(adjusted_k(Days ~ Eth + Sex + Age + Lrn, quine)),
  quineOffset = negative_binomial(Days ~ Eth + Age + offset(log(weeks)), observed),
  insurance = generalised(Claims ~ District + Group + Age + offset(log(Holders)), claims, poisson()),
  budworm = generalised(cbind(dead, 20 - dead) ~ sex * ldose, budworm, binomial(), rep(20, 12)),
  birthwt = generalised(low ~ age + lwt + factor(race) + smoke, birthwt, binomial())
), "\n", sep = "")
