# Healing of the demo unit, worked out a second time: R reads the demo sheet itself (dates, not the registry's days), applies the definitions
# of surgery to consolidation anew, and summarises each group by clubSandwich and survival. Invented data: this checks the way from sheet to
# answer, not a clinical figure. Prints one JSON object.
suppressMessages({ library(clubSandwich); library(survival); library(jsonlite) })
d <- read.csv("../../demo-data/seven-years.csv", colClasses = "character", na.strings = "")
num <- function(x) suppressWarnings(as.numeric(x))
day <- function(x) as.numeric(as.Date(x))
surgery <- day(d$surgery_day); start <- day(d$distraction_start_day); end <- day(d$distraction_end_day)
healedOn <- day(d$consolidation_day); gain <- num(d$gain_mm)
film <- pmax(day(d$last_not_healed_day), day(d$last_film_day), na.rm = TRUE); film[is.infinite(film)] <- NA
seen <- day(d$last_follow_up_day); bearing <- day(d$full_weight_bearing_day)
frameOff <- day(d$fixator_removal_day); implantOut <- day(d$implant_removal_day); rescue <- day(d$rescue_day)
died <- ave(as.integer(d$follow_up_status %in% "died"), d$local_id, FUN = max) > 0
within240 <- function(x) is.na(x) | x - start <= 240
after <- function(x) !is.na(x) & !is.na(film) & x > film

still <- is.na(healedOn) & !is.na(start) & is.na(end) & within240(film) & within240(seen) & is.na(bearing) & is.na(frameOff) & is.na(implantOut)
ended <- d$end_state %in% c("abandoned", "nonunion", "amputated") | d$implant_out_reason %in% c("infection", "breakage", "intolerance") | died
missing <- is.na(film) | after(bearing) | after(implantOut) | after(frameOff) | (!is.na(seen) & !is.na(film) & seen - film > 90)
status <- ifelse(!is.na(healedOn), "healed", ifelse(still, "still-distracting", ifelse(!is.na(rescue), "rescued",
  ifelse(ended, "ended-unhealed", ifelse(missing, "healing-date-missing", "not-healed-at-last-film")))))

reason <- ifelse(d$procedure %in% "transport", "not-lengthening", ifelse(!(d$bone %in% c("femur", "tibia")), "bone-apart",
  ifelse(num(d$osteotomy_levels) %in% 2, "two-level", ifelse(status == "still-distracting", "still-distracting",
  ifelse(is.na(gain), "no-gain", ifelse(gain <= 0, "gain-not-positive", ifelse(gain < 10, "gain-under-10mm",
  ifelse(status == "healing-date-missing", "healing-date-missing", NA))))))))
index <- ifelse(status == "healed", healedOn - surgery, film - surgery) * 10 / gain
class <- ifelse(!is.na(reason), "excluded", ifelse(status == "healed", "healed", ifelse(status == "ended-unhealed", "ended", "censored")))

limits <- function(estimate, se, df) list(estimate = estimate, se = se, df = df, lower = estimate - qt(.975, df) * se, upper = estimate + qt(.975, df) * se)
none <- list(estimate = NA, se = NA, df = NA, lower = NA, upper = NA)
clustered <- function(y, who) {
  if (length(unique(who)) < 3) return(c(list(estimate = mean(y)), none[-1]))
  fit <- lm(y ~ 1); r <- conf_int(fit, vcov = vcovCR(fit, cluster = who, type = "CR2"), test = "Satterthwaite")
  list(estimate = r$beta, se = r$SE, df = r$df, lower = r$CI_L, upper = r$CI_U)
}
byPatient <- function(y, who) { m <- as.numeric(tapply(y, who, mean)); n <- length(m)
  if (n < 3) c(list(estimate = mean(m)), none[-1]) else limits(mean(m), sd(m) / sqrt(n), n - 1) }
ratio <- function(days, cm, who) {
  y <- tapply(days, who, sum); x <- tapply(cm, who, sum); g <- length(y); r <- sum(y) / sum(x)
  if (g < 2) return(c(list(estimate = r), none[-1]))
  se <- sqrt(g / (g - 1) * sum((y - r * x)^2)) / sum(x)
  out <- limits(r, se, g - 1); if (g < 6) { out$lower <- NA; out$upper <- NA }; out
}
curve <- function(value, event) { fit <- survfit(Surv(value, event) ~ 1); as.numeric(quantile(fit, c(.25, .5, .75))$quantile) }

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
