# Reads data sets and writes what R makes of them: set, what, value, one a line.
# Rscript --vanilla oracle.R shots.csv pairs.csv answers.csv
args <- commandArgs(trailingOnly = TRUE)
shots <- read.csv(args[1])
pairs <- read.csv(args[2])
out <- file(args[3], "w")

say <- function(set, what, values) {
  values <- as.numeric(values)
  cat(sprintf("%d,%s,%d,%.17g\n", set, what, seq_along(values) - 1, values), file = out, sep = "")
}

model <- deriv(~ sqrt(2 * E / (m + K)), c("E", "K"), function(E, K, m) NULL)

for (set in unique(shots$set)) {
  d <- shots[shots$set == set, ]
  m <- d$mass
  v <- d$speed

  line <- summary(lm(v ~ m))
  say(set, "line", c(line$coefficients[, 1:2], line$sigma))
  say(set, "pooled", sigma(lm(v ~ factor(d$cell))))

  start <- coef(lm(1 / v^2 ~ m, weights = v^6))
  fit <- nls(
    v ~ model(E, K, m),
    start = list(E = 1 / (2 * start[[2]]), K = start[[1]] / start[[2]]),
    control = nls.control(maxiter = 200, tol = 1e-6, minFactor = 1e-10)
  )
  said <- summary(fit, correlation = TRUE)
  say(set, "nls", c(said$coefficients[, 1:2], said$sigma, said$correlation[1, 2]))

  a <- v[d$cell == 0]
  b <- v[d$cell == 1]
  one <- t.test(a)
  say(set, "one", c(one$estimate, one$conf.int))
  welch <- t.test(a, b)
  say(set, "welch", c(welch$statistic, welch$parameter, welch$p.value, welch$conf.int))
  n <- length(a)
  delta <- sd(a) * (0.5 + set %% 7 / 3)
  say(set, "power", c(
    power.t.test(n = n, delta = delta, sd = sd(a))$power,
    power.t.test(power = 0.9, delta = delta, sd = sd(a), tol = 1e-12)$n
  ))

  p <- pairs[pairs$set == set, ]
  rank <- cor.test(p$x, p$y, method = "spearman", exact = TRUE)
  say(set, "spearman", c(rank$estimate, rank$p.value))
}
close(out)
