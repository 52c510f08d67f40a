# Fits seasons by nlme, days and bows within days and arrows on bows as random effects, a straight line
# in x for each bow, and a condition z of the session where there is one, and writes what it finds: set, what, number, value, one a line.
# Rscript --vanilla seasons.R shots.csv answers.csv
suppressMessages(library(nlme))
args <- commandArgs(trailingOnly = TRUE)
shots <- read.csv(args[1], stringsAsFactors = TRUE)
out <- file(args[2], "w")

say <- function(set, what, values) {
  values <- as.numeric(values)
  cat(sprintf("%d,%s,%d,%.17g\n", set, what, seq_along(values) - 1, values), file = out, sep = "")
}

for (set in unique(shots$set)) {
  d <- droplevels(shots[shots$set == set, ])
  d$bow <- factor(d$bow, unique(d$bow))
  d$one <- 1
  d$onDay <- interaction(d$bow, d$session, drop = TRUE)
  d$onBow <- interaction(d$bow, d$arrow, drop = TRUE)
  fit <- lme(
    if (any(d$z != 0)) y ~ 0 + bow + bow:x + z else y ~ 0 + bow + bow:x,
    data = d,
    random = list(one = pdBlocked(list(
      pdIdent(~ session - 1), pdIdent(~ onDay - 1), pdIdent(~ onBow - 1)
    ))),
    control = lmeControl(returnObject = TRUE, msMaxIter = 200)
  )
  sd <- sqrt(diag(as.matrix(fit$modelStruct$reStruct[[1]]))) * fit$sigma
  kinds <- sapply(c("^session", "^onDay", "^onBow"), function(kind) sd[grep(kind, names(sd))[1]])
  say(set, "sd", c(kinds, fit$sigma))
  say(set, "likelihood", logLik(fit))
  last <- order(names(fixef(fit)) == "z")
  say(set, "estimate", fixef(fit)[last])
  say(set, "se", sqrt(diag(vcov(fit)))[last])
}
close(out)
