# Outcomes of the demo unit worked out a second time from the sheet itself: every other clock, gain against plan, a share, a rate, comparisons,
# the consolidation curve. Invented data: this checks the way from sheet to answer, not a clinical figure. Prints one JSON object.
source("demo-sheet.R")
fixators <- c("monolateral-fixator", "circular-fixator", "hexapod-circular-fixator", "lengthening-over-nail", "lengthening-then-nailing", "lengthening-then-plating")
isFrame <- d$device %in% fixators
who <- d$local_id
apart <- ifelse(d$procedure %in% "transport", "not-lengthening", ifelse(!(d$bone %in% c("femur", "tibia")), "bone-apart",
  ifelse(num(d$osteotomy_levels) %in% 2, "two-level", NA)))
withoutGain <- ifelse(status == "still-distracting", "still-distracting", ifelse(is.na(gain), "no-gain", ifelse(gain <= 0, "gain-not-positive",
  ifelse(gain < 10, "gain-under-10mm", NA))))
first <- function(...) Reduce(function(a, b) ifelse(is.na(a), b, a), list(...))

# A clock: days from one event to another; of those that end at consolidation the unhealed count to their last film
clock <- function(from, to, perCm, heals, frames = FALSE, inverse = FALSE) {
  why <- first(apart, if (perCm) withoutGain else NA)
  ended <- rep(FALSE, length(why))
  if (heals) {
    why <- first(why, ifelse(status == "healing-date-missing", "healing-date-missing", NA))
    ended <- is.na(why) & status == "ended-unhealed"
    to <- ifelse(status == "healed", to, film)
  }
  why <- ifelse(ended, NA, first(why, ifelse(is.na(from), "no-start", NA), ifelse(is.na(to), "no-end", NA),
    ifelse(to < from | (inverse & to == from), "days-out-of-order", NA), if (frames) ifelse(!isFrame, "not-a-fixator", NA) else NA))
  days <- to - from
  list(why = why, ended = ended, healed = !heals | status == "healed", days = days,
    value = if (inverse) gain / days else if (perCm) days * 10 / gain else days, index = perCm && !inverse, heals = heals)
}
clocks <- list(
  "distraction-to-consolidation" = clock(start, healedOn, TRUE, TRUE), "maturation" = clock(end, healedOn, TRUE, TRUE),
  "treatment" = clock(surgery, ifelse(isFrame, frameOff, healedOn), TRUE, TRUE),
  "fixator" = clock(surgery, frameOff, TRUE, FALSE, frames = TRUE), "weight-bearing" = clock(surgery, bearing, TRUE, FALSE),
  "distraction" = clock(start, end, TRUE, FALSE), "latency" = clock(surgery, start, FALSE, FALSE),
  "distraction-time" = clock(start, end, FALSE, FALSE), "time-to-consolidation" = clock(surgery, healedOn, FALSE, TRUE),
  "time-to-full-weight-bearing" = clock(surgery, bearing, FALSE, FALSE), "distraction-rate" = clock(start, end, TRUE, FALSE, inverse = TRUE))

summary.clock <- function(one, rows) {
  in_ <- rows[is.na(one$why[rows]) & !one$ended[rows]]; h <- in_[one$healed[in_]]
  q <- curve(one$value[in_], as.integer(one$healed[in_]))
  if (length(h) == length(in_)) q[c(1, 3)] <- as.numeric(quantile(one$value[h], c(.25, .75), type = 7))
  counts <- if (one$heals) list(healed = length(h), censored = length(in_) - length(h), ended = sum(one$ended[rows])) else list(n = length(h))
  c(list(segments = length(rows)), counts, list(excluded = as.list(table(one$why[rows])), mean = clustered(one$value[h], who[h]),
    patientMean = byPatient(one$value[h], who[h]),
    ratioOfSums = if (one$index) ratio(one$days[h], gain[h] / 10, who[h]) else none,
    median = q[2], quartiles = list(lower = q[1], upper = q[3])))
}
out <- list()
for (id in names(clocks)) out[[paste0("clock/", id)]] <- summary.clock(clocks[[id]], seq_along(surgery))

# Gain against the plan at start: bias, and the share within 10 mm by Wilson on the effective number
planned <- num(d$planned_gain_mm)
against <- which(is.na(first(ifelse(d$procedure %in% "transport", "t", NA), ifelse(!(d$bone %in% c("femur", "tibia")), "b", NA))) & status != "still-distracting" &
  !is.na(gain) & !is.na(planned) & planned > 0)
error <- gain - planned
score <- function(p, n) { z <- qnorm(.975); m <- (p + z^2 / (2 * n)) / (1 + z^2 / n); h <- z * sqrt(p * (1 - p) / n + z^2 / (4 * n^2)) / (1 + z^2 / n); c(m - h, m + h) }
shareOf <- function(x, cluster) {
  n <- length(x); p <- mean(x); y <- tapply(x, cluster, sum); m <- tapply(x, cluster, length); G <- length(y)
  v <- G / (G - 1) * sum((y - p * m)^2) / n^2; deff <- v / (p * (1 - p) / n)
  e <- min(n, n / deff) * (qnorm(.975) / qt(.975, G - 1))^2; ci <- score(p, e)
  list(x = sum(x), n = n, patients = G, estimate = p, lower = ci[1], upper = ci[2], deff = deff)
}
out[["gain-error"]] <- c(list(n = length(against)), clustered(error[against], who[against]))
out[["gain-within-10mm"]] <- shareOf(as.numeric(abs(error[against]) <= 10), who[against])

# Events of segments whose events were looked for
events <- Reduce(`+`, lapply(1:3, function(i) as.integer(!is.na(d[[paste0("event_type_", i)]]) & !(d[[paste0("planned_", i)]] %in% "yes"))))
looked <- which(d$events_looked_for %in% "fully" & !(d$procedure %in% "transport"))
out[["complication-segments-with-any"]] <- shareOf(as.numeric(events[looked] > 0), who[looked])
rateOf <- function(rows, e, per) {
  y <- tapply(events[rows], who[rows], sum); x <- tapply(e[rows], who[rows], sum); G <- length(y); r <- sum(y) / sum(x)
  se <- sqrt(G / (G - 1) * sum((y - r * x)^2)) / sum(y); t <- qt(.975, G - 1)
  list(events = sum(y), exposure = sum(x), estimate = per * r, lower = per * r * exp(-t * se), upper = per * r * exp(t * se))
}
cm <- which(looked %in% which(gain > 0)); out[["complication-events-per-10cm"]] <- rateOf(looked[cm], gain / 10, 10)

# Two devices of which hardly a patient has both: index by CR2, days at equal gain on logarithms and on straight lines, shares by Newcombe on the
# effective numbers
satt <- function(fit, cluster, which) { r <- conf_int(fit, vcov = vcovCR(fit, cluster = cluster, type = "CR2"), test = "Satterthwaite")
  list(estimate = r$beta[which], se = r$SE[which], df = r$df[which], lower = r$CI_L[which], upper = r$CI_U[which]) }
apartOf <- c("lengthening-over-nail", "hexapod-circular-fixator")
index <- clock(surgery, healedOn, TRUE, TRUE)
both <- which(d$device %in% apartOf & is.na(index$why) & !index$ended & index$healed)
over <- as.integer(d$device[both] == apartOf[1])
out[["compare/index"]] <- c(list(patientsInBoth = length(intersect(who[both][over == 1], who[both][over == 0]))), satt(lm(index$value[both] ~ over), who[both], 2))
equal <- satt(lm(log(index$days[both]) ~ log(gain[both] / 10) + over), who[both], 3)
out[["compare/equal-gain"]] <- list(estimate = exp(equal$estimate), lower = exp(equal$lower), upper = exp(equal$upper), se = equal$se, df = equal$df)
out[["compare/straight-lines"]] <- satt(lm(index$days[both] ~ I(gain[both] / 10) + over), who[both], 3)
newcombe <- function(a, b) { list(estimate = a$estimate - b$estimate,
  lower = a$estimate - b$estimate - sqrt((a$estimate - a$lower)^2 + (b$upper - b$estimate)^2),
  upper = a$estimate - b$estimate + sqrt((a$upper - a$estimate)^2 + (b$estimate - b$lower)^2)) }
sides <- lapply(apartOf, function(device) { rows <- looked[d$device[looked] %in% device]; shareOf(as.numeric(events[rows] > 0), who[rows]) })
shared <- length(Reduce(intersect, lapply(apartOf, function(device) who[looked][d$device[looked] %in% device])))
out[["compare/share"]] <- c(list(patientsInBoth = shared), newcombe(sides[[1]], sides[[2]]))

# Events per segment of the same two devices at equal planned gain: quasi-Poisson on the scale of logarithms, CR2
rows <- looked[d$device[looked] %in% apartOf & !is.na(planned[looked])]
over <- as.integer(d$device[rows] == apartOf[1])
poissonFrom <- function(start) glm(events[rows] ~ over + planned[rows], family = poisson, start = start, control = list(epsilon = 1e-14, maxit = 100))
# fitted anew from its own answer: glm's weights are those of the step before the last
rate <- satt(poissonFrom(coef(poissonFrom(NULL))), who[rows], 2)
out[["compare/adjusted-rate"]] <- list(estimate = exp(rate$estimate), lower = exp(rate$lower), upper = exp(rate$upper), se = rate$se, df = rate$df)

# The consolidation curve of hexapod fixators, of which none ended unhealed: Kaplan–Meier with robust log-log limits by patient, while five are at risk
days <- clocks[["time-to-consolidation"]]
rows <- which(d$device %in% "hexapod-circular-fixator" & is.na(days$why) & days$days > 0)
fit <- survfit(Surv(days$days[rows], as.integer(days$healed[rows])) ~ 1, cluster = who[rows], robust = TRUE, conf.type = "log-log")
keep <- seq_len(min(c(which(fit$n.risk < 5) - 1, length(fit$time))))
out[["curve/hexapod"]] <- list(ended = sum(days$ended[d$device %in% "hexapod-circular-fixator"]), day = fit$time[keep], atRisk = fit$n.risk[keep],
  estimate = 1 - fit$surv[keep], lower = 1 - fit$upper[keep], upper = 1 - fit$lower[keep])
# The same read between films: by some day after the last film that showed it unhealed, where that is known
before <- day(d$last_not_healed_day); known <- !is.na(before) & before < healedOn & days$healed
from <- ifelse(known, before - surgery, days$days); to <- ifelse(days$healed, days$days, NA)
spans <- survfit(Surv(pmax(from[rows], 0), to[rows], type = "interval2") ~ 1, timefix = FALSE)
q <- as.numeric(quantile(spans, c(.25, .5, .75), conf.int = FALSE))
out[["curve/between-films"]] <- list(withFilmBefore = sum(known[rows]), medianDays = q[2], quartiles = list(lower = q[1], upper = q[3]))
# Whether the curves of two devices are one: the robust score by patient of a Cox model, ties as Breslow
two <- which(d$device %in% apartOf & is.na(days$why) & days$days > 0)
cox <- coxph(Surv(days$days[two], as.integer(days$healed[two])) ~ d$device[two], cluster = who[two], ties = "breslow")
out[["curve/test"]] <- list(ended = sum(days$ended[d$device %in% apartOf]), p = as.numeric(summary(cox)$robscore["pvalue"]))
# The log-normal model of days on gain, the unhealed in: residuals of the healed against normal quantiles at the middle of their step
model <- which(is.na(index$why) & !index$ended & index$days > 0)
fit <- survreg(Surv(index$days[model], as.integer(index$healed[model])) ~ log(gain[model] / 10), dist = "lognormal", control = survreg.control(rel.tolerance = 1e-12))
residual <- (log(index$days[model]) - fit$linear.predictors) / fit$scale
km <- survfit(Surv(residual - min(residual) + 1, as.integer(index$healed[model])) ~ 1, timefix = FALSE)
middle <- qnorm(1 - (c(1, head(km$surv, -1)) + km$surv) / 2)[km$n.event > 0]
out[["log-normal-fit"]] <- list(scale = fit$scale, residual = sort(unique(residual[index$healed[model]])), normal = middle)
cat(toJSON(out, auto_unbox = TRUE, digits = NA, na = "null"))
