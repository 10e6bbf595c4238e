# The demo sheet as R reads it: dates as days, the healing status of each row by the definitions, and summaries by clubSandwich and survival.
# Sourced by the scripts that work out measures of the demo a second time; prints nothing.
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
