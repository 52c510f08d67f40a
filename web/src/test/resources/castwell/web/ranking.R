# The ranking in R, from exported shots: what the report of all bows is timed against.
# Rscript ranking.R SHOTS.csv
shots <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = FALSE)
shots <- shots[shots$counts == "true" & !is.na(shots$speed_fps), ]
shots$cell <- paste(shots$bow, shots$bow_state, shots$arrow)

without_strays <- function(session) {
  repeat {
    if (length(unique(session$cell)) < 2) return(session)
    fit <- lm(speed_fps ~ cell, session)
    t <- rstudent(fit)
    p <- p.adjust(2 * pt(-abs(t), fit$df.residual - 1), "bonferroni", n = sum(is.finite(t)))
    if (!any(p < 0.01, na.rm = TRUE)) return(session)
    session <- session[-which.min(p), ]
  }
}
shots <- do.call(rbind, lapply(split(shots, shots$session), without_strays))

cast_of <- function(bow) {
  now <- bow[bow$bow_state == max(bow$bow_state), ]
  line <- lm(I(1 / speed_fps^2) ~ arrow_mass_gr, now)
  start <- list(E = 1 / (2 * coef(line)[[2]]), K = coef(line)[[1]] / coef(line)[[2]])
  fit <- nls(speed_fps ~ sqrt(2 * E / (arrow_mass_gr + K)), now, start)
  m <- 10 * now$draw_weight_lb[1]
  E <- coef(fit)[["E"]]
  K <- coef(fit)[["K"]]
  v <- sqrt(2 * E / (m + K))
  gradient <- c(v / (2 * E), -v / (2 * (m + K)))
  u <- sqrt(drop(gradient %*% vcov(fit) %*% gradient))
  c(cast = v, u = u, n = nrow(now), df = df.residual(fit))
}
casts <- t(sapply(split(shots, shots$bow), cast_of))
casts <- casts[order(-casts[, "cast"]), ]
pairs <- combn(nrow(casts), 2)
difference <- casts[pairs[1, ], "cast"] - casts[pairs[2, ], "cast"]
u <- sqrt(casts[pairs[1, ], "u"]^2 + casts[pairs[2, ], "u"]^2)
p <- p.adjust(2 * pt(-abs(difference / u), casts[pairs[1, ], "df"]), "holm")
print(casts)
cat(sum(p < 0.05), "of", length(p), "pairs differ\n")
