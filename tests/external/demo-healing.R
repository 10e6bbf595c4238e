# Healing of the demo unit, worked out a second time: R reads the demo sheet itself (dates, not the registry's days), applies the definitions
# of surgery to consolidation anew, and summarises each group by clubSandwich and survival. Invented data: this checks the way from sheet to
# answer, not a clinical figure. Prints one JSON object.
source("demo-sheet.R")
reason <- ifelse(d$procedure %in% "transport", "not-lengthening", ifelse(!(d$bone %in% c("femur", "tibia")), "bone-apart",
  ifelse(num(d$osteotomy_levels) %in% 2, "two-level", ifelse(status == "still-distracting", "still-distracting",
  ifelse(is.na(gain), "no-gain", ifelse(gain <= 0, "gain-not-positive", ifelse(gain < 10, "gain-under-10mm",
  ifelse(status == "healing-date-missing", "healing-date-missing", NA))))))))
index <- ifelse(status == "healed", healedOn - surgery, film - surgery) * 10 / gain
class <- ifelse(!is.na(reason), "excluded", ifelse(status == "healed", "healed", ifelse(status == "ended-unhealed", "ended", "censored")))
summarise <- function(rows) {
  h <- rows[class[rows] == "healed"]; a <- rows[class[rows] %in% c("healed", "censored")]; who <- d$local_id
  q <- curve(index[a], as.integer(class[a] == "healed"))
  if (length(h) == length(a)) q[c(1, 3)] <- as.numeric(quantile(index[h], c(.25, .75), type = 7))
  list(patients = length(unique(who[rows])), segments = length(rows), healed = length(h), censored = length(a) - length(h),
    ended = sum(class[rows] == "ended"), excluded = as.list(table(reason[rows])),
    mean = clustered(index[h], who[h]), patientMean = byPatient(index[h], who[h]),
    ratioOfSums = ratio(index[h] * gain[h] / 10, gain[h] / 10, who[h]),
    median = q[2], quartiles = list(lower = q[1], upper = q[3]))
}
out <- list(all = summarise(seq_along(index)))
common <- c("magnetic-nail", "lengthening-over-nail", "monolateral-fixator", "hexapod-circular-fixator", "circular-fixator")
for (device in common) out[[paste0("device-", device)]] <- summarise(which(d$device %in% device))
for (bone in c("femur", "tibia")) out[[paste0("bone-", bone)]] <- summarise(which(d$bone == bone))
cat(toJSON(out, auto_unbox = TRUE, digits = NA, na = "null"))
