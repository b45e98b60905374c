# Makes perch.csv: the perch (species 7) among the fish caught in Laengelmavesi
# in 1917 (Brofeldt; JSE Data Archive), from the R package rrcov (GPL-2 or
# later), data(fish). length_cm is from the nose to the notch of the tail
# (Length2). girth_cm is derived, not measured: the circumference, by
# Ramanujan's second formula, of an ellipse as high and as wide as the fish.
# Run in this folder, FOLDER the one with fish.rda: TZ=UTC Rscript fish.R FOLDER
load(file.path(commandArgs(TRUE)[1], "fish.rda"))
p <- subset(fish, Species == 7)
a <- p$Height / 100 * p$Length3 / 2; b <- p$Width / 100 * p$Length3 / 2
h <- ((a - b) / (a + b))^2
girth <- pi * (a + b) * (1 + 3 * h / (10 + sqrt(4 - 3 * h)))
out <- data.frame(length_cm = p$Length2, girth_cm = round(girth, 8), weight_g = p$Weight)
write.csv(out, "perch.csv", row.names = FALSE, quote = FALSE)
