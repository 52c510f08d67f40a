# How measured times grow with the shots: Rscript growth.R TABLE.md CHART.svg
# Prints each page's exponent, the slope of log time over log shots (least squares).
arguments <- commandArgs(TRUE)
lines <- gsub("\033\\[[0-9;]*m", "", readLines(arguments[1], warn = FALSE)) # Maven's colours
rows <- strsplit(grep("^\\| /", lines, value = TRUE), "\\|")
heading <- strsplit(grep("^\\| page", lines, value = TRUE), "\\|")[[1]]
shots <- as.numeric(sub(" shots", "", heading[-(1:2)]))
pages <- trimws(sapply(rows, `[`, 2))
ms <- t(sapply(rows, function(row) as.numeric(row[-(1:2)])))[, shots > 0]
shots <- shots[shots > 0] # an empty store has no logarithm
exponent <- apply(ms, 1, function(y) coef(lm(log(y) ~ log(shots)))[[2]])

cat("| page | exponent |\n|---|---:|\n")
cat(sprintf("| %s | %.2f |\n", pages, exponent), sep = "")

# Okabe and Ito's colours, and marks of their own, since colour alone isn't told by everybody.
colours <- c("#000000", "#E69F00", "#56B4E9", "#009E73", "#0072B2", "#D55E00", "#CC79A7", "#F0E442")
style <- seq_along(pages)
svg(arguments[2], width = 9, height = 6)
par(mar = c(4, 4, 2, 15), xpd = NA)
matplot(shots, t(ms), log = "xy", type = "b", lty = 1, pch = style, lwd = 1.6,
  col = colours[(style - 1) %% 8 + 1], xlab = "shots in the store", ylab = "ms to answer, median",
  main = "How long a page takes over so many shots", xaxt = "n", las = 1)
axis(1, shots, format(shots, big.mark = ",", scientific = FALSE, trim = TRUE))
legend(max(shots) * 1.4, max(ms), sprintf("%s  (%.2f)", pages, exponent), pch = style, lty = 1,
  col = colours[(style - 1) %% 8 + 1], bty = "n", cex = 0.8, title = "page (exponent)", title.adj = 0)
invisible(dev.off())
