# Makes ships.csv and insurance.csv, the data sets ships (rows with service) and
# Insurance of the R package MASS (Venables and Ripley 2002, GPL-2 | GPL-3).
# Run in this folder: TZ=UTC Rscript mass.R
library(MASS)
write.csv(subset(ships, service > 0), "ships.csv", row.names = FALSE, quote = FALSE)
write.csv(Insurance[c("District", "Group", "Age", "Holders", "Claims")], "insurance.csv", row.names = FALSE, quote = FALSE)
