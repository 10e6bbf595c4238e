-- Written from the codebook by: npm run db:write
-- Once released this file is never changed; what comes later is a file of its own.
-- An identity table says what a row is, for ever; a version table what was known of it, from batch to batch.
-- As of batch N: since_batch <= N AND N < until_batch. 2147483647 stands for open.

CREATE TABLE erasure (
  only INTEGER PRIMARY KEY CONSTRAINT erasure_only_one CHECK (only = 1),
  count INTEGER NOT NULL CONSTRAINT erasure_count_limits CHECK (count >= 0),
  running INTEGER NOT NULL CONSTRAINT erasure_running_flag CHECK (running IN (0, 1))
) STRICT;

INSERT INTO erasure (only, count, running) VALUES (1, 0, 0);

CREATE TRIGGER erasure_never_falls BEFORE UPDATE ON erasure
WHEN NEW.count < OLD.count
BEGIN SELECT RAISE(ABORT, 'erasure: the count never falls'); END;

CREATE TRIGGER erasure_never_deleted BEFORE DELETE ON erasure
BEGIN SELECT RAISE(ABORT, 'erasure: the count is never deleted'); END;

CREATE TABLE batch (
  batch INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CONSTRAINT batch_kind_codes CHECK (kind IN ('intake', 'undo', 'correction', 'settings', 'join', 'part', 'erasure')),
  at TEXT NOT NULL CONSTRAINT batch_at_utc CHECK (at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9]Z'),
  undoes INTEGER,
  persons INTEGER NOT NULL CONSTRAINT batch_persons_limits CHECK (persons >= 0),
  body_measures INTEGER NOT NULL CONSTRAINT batch_body_measures_limits CHECK (body_measures >= 0),
  segments INTEGER NOT NULL CONSTRAINT batch_segments_limits CHECK (segments >= 0),
  visits INTEGER NOT NULL CONSTRAINT batch_visits_limits CHECK (visits >= 0),
  events INTEGER NOT NULL CONSTRAINT batch_events_limits CHECK (events >= 0),
  scores INTEGER NOT NULL CONSTRAINT batch_scores_limits CHECK (scores >= 0),
  content_hash TEXT NOT NULL CONSTRAINT batch_content_hash_hex CHECK (length(content_hash) = 64 AND content_hash NOT GLOB '*[^0-9a-f]*'),
  CONSTRAINT batch_undoes_earlier CHECK ((kind = 'undo') = (undoes IS NOT NULL) AND ifnull(undoes, 0) < batch)
) STRICT;

CREATE TRIGGER batch_without_gaps BEFORE INSERT ON batch
WHEN NEW.batch IS NOT (SELECT ifnull(max(batch), 0) + 1 FROM batch)
BEGIN SELECT RAISE(ABORT, 'batch: numbers run without gaps'); END;

CREATE TRIGGER batch_never_changed BEFORE UPDATE ON batch
BEGIN SELECT RAISE(ABORT, 'batch: a batch is never changed'); END;

CREATE TRIGGER batch_never_deleted BEFORE DELETE ON batch
BEGIN SELECT RAISE(ABORT, 'batch: a batch is never deleted'); END;

CREATE TABLE batch_finding (
  batch INTEGER NOT NULL,
  code TEXT NOT NULL CONSTRAINT batch_finding_code_word CHECK (length(code) BETWEEN 3 AND 60 AND code NOT GLOB '*[^a-z0-9-]*'),
  count INTEGER NOT NULL CONSTRAINT batch_finding_count_limits CHECK (count >= 1),
  PRIMARY KEY (batch, code)
) STRICT;

CREATE TRIGGER batch_finding_never_changed BEFORE UPDATE ON batch_finding
BEGIN SELECT RAISE(ABORT, 'batch_finding: a count is never changed'); END;

CREATE TRIGGER batch_finding_never_deleted BEFORE DELETE ON batch_finding
BEGIN SELECT RAISE(ABORT, 'batch_finding: a count is never deleted'); END;

CREATE TABLE unit_key (
  form TEXT PRIMARY KEY NOT NULL CONSTRAINT unit_key_form_codes CHECK (form IN ('passphrase', 'recovery')),
  key_id TEXT NOT NULL CONSTRAINT unit_key_key_id_word CHECK (length(key_id) BETWEEN 4 AND 64 AND key_id NOT GLOB '*[^0-9A-Za-z_-]*'),
  iterations INTEGER NOT NULL CONSTRAINT unit_key_iterations_limits CHECK (iterations BETWEEN 1 AND 100000000),
  salt TEXT NOT NULL CONSTRAINT unit_key_salt_base64 CHECK (length(salt) BETWEEN 16 AND 256 AND salt NOT GLOB '*[^0-9A-Za-z+/=]*'),
  iv TEXT NOT NULL CONSTRAINT unit_key_iv_base64 CHECK (length(iv) BETWEEN 16 AND 256 AND iv NOT GLOB '*[^0-9A-Za-z+/=]*'),
  sealed TEXT NOT NULL CONSTRAINT unit_key_sealed_base64 CHECK (length(sealed) BETWEEN 16 AND 256 AND sealed NOT GLOB '*[^0-9A-Za-z+/=]*')
) STRICT;

CREATE TRIGGER unit_key_one_key BEFORE INSERT ON unit_key
WHEN EXISTS (SELECT 1 FROM unit_key WHERE key_id <> NEW.key_id)
BEGIN SELECT RAISE(ABORT, 'unit_key: a registry has one key'); END;

CREATE TRIGGER unit_key_same_key BEFORE UPDATE ON unit_key
WHEN NEW.key_id <> OLD.key_id
BEGIN SELECT RAISE(ABORT, 'unit_key: the same key is sealed again, never another'); END;

CREATE TRIGGER unit_key_never_deleted BEFORE DELETE ON unit_key
BEGIN SELECT RAISE(ABORT, 'unit_key: the key is never deleted'); END;

CREATE TABLE question (
  stamp TEXT PRIMARY KEY NOT NULL CONSTRAINT question_stamp_hex CHECK (length(stamp) = 12 AND stamp NOT GLOB '*[^0-9a-f]*'),
  asked TEXT NOT NULL CONSTRAINT question_asked_json CHECK (json_valid(asked))
) STRICT;

CREATE TRIGGER question_never_changed BEFORE UPDATE ON question
BEGIN SELECT RAISE(ABORT, 'question: a question is never changed'); END;

CREATE TABLE cohort (
  name TEXT PRIMARY KEY NOT NULL CONSTRAINT cohort_name_word CHECK (length(name) BETWEEN 1 AND 60 AND name NOT GLOB '*[^0-9a-z-]*'),
  conditions TEXT NOT NULL CONSTRAINT cohort_conditions_json CHECK (json_valid(conditions))
) STRICT;

CREATE TABLE settings (
  entity INTEGER NOT NULL CONSTRAINT settings_entity_one CHECK (entity = 1),
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  content TEXT NOT NULL CONSTRAINT settings_content_json CHECK (json_valid(content)),
  CONSTRAINT settings_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER settings_closed_once BEFORE UPDATE OF until_batch ON settings
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'settings: a version is closed once'); END;

CREATE TRIGGER settings_never_changed BEFORE UPDATE OF entity, since_batch, content ON settings
BEGIN SELECT RAISE(ABORT, 'settings: a version is never changed'); END;

CREATE TRIGGER settings_never_deleted BEFORE DELETE ON settings
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'settings: a version goes by erasure alone'); END;

CREATE TABLE person_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  person TEXT NOT NULL CONSTRAINT person_id_person_keyed CHECK (length(person) = 26 AND person NOT GLOB '*[^0-9A-HJKMNP-TV-Z]*')
) STRICT;

CREATE UNIQUE INDEX person_id_natural_key ON person_id (person);

CREATE TRIGGER person_id_never_changed BEFORE UPDATE ON person_id
BEGIN SELECT RAISE(ABORT, 'person_id: an identity is never changed'); END;

CREATE TRIGGER person_id_never_deleted BEFORE DELETE ON person_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'person_id: an identity goes by erasure alone'); END;

CREATE TABLE person (
  entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  unit TEXT NOT NULL CONSTRAINT person_unit_listed CHECK (length(unit) BETWEEN 2 AND 16 AND unit GLOB '[a-z]*' AND unit NOT GLOB '*[^a-z0-9-]*'),
  sex TEXT CONSTRAINT person_sex_codes CHECK (sex = 'female' OR sex = 'male' OR sex = 'other' OR sex = 'unknown'),
  indication TEXT CONSTRAINT person_indication_codes CHECK (indication = 'stature' OR indication = 'limb-length-discrepancy' OR indication = 'deformity-with-shortening' OR indication = 'bone-loss'),
  aetiology TEXT CONSTRAINT person_aetiology_codes CHECK (aetiology = 'constitutional-short-stature' OR aetiology = 'idiopathic-short-stature' OR aetiology = 'achondroplasia' OR aetiology = 'hypochondroplasia' OR aetiology = 'other-dysplasia' OR aetiology = 'turner' OR aetiology = 'growth-hormone-deficiency' OR aetiology = 'small-for-gestational-age' OR aetiology = 'congenital-femoral-deficiency' OR aetiology = 'fibular-hemimelia' OR aetiology = 'tibial-hemimelia' OR aetiology = 'hemihypertrophy' OR aetiology = 'post-traumatic' OR aetiology = 'post-infective' OR aetiology = 'growth-arrest' OR aetiology = 'blount' OR aetiology = 'enchondromatosis' OR aetiology = 'neurological' OR aetiology = 'other' OR aetiology = 'unknown'),
  smoking TEXT CONSTRAINT person_smoking_codes CHECK (smoking = 'now' OR smoking = 'ever' OR smoking = 'never' OR smoking = 'unknown'),
  diabetes INTEGER CONSTRAINT person_diabetes_flag CHECK (diabetes = 0 OR diabetes = 1),
  vitamin_ddeficiency INTEGER CONSTRAINT person_vitamin_ddeficiency_flag CHECK (vitamin_ddeficiency = 0 OR vitamin_ddeficiency = 1),
  anti_inflammatory_use INTEGER CONSTRAINT person_anti_inflammatory_use_flag CHECK (anti_inflammatory_use = 0 OR anti_inflammatory_use = 1),
  earlier_infection INTEGER CONSTRAINT person_earlier_infection_flag CHECK (earlier_infection = 0 OR earlier_infection = 1),
  permitted_use TEXT CONSTRAINT person_permitted_use_codes CHECK (permitted_use = 'audit-only' OR permitted_use = 'research-with-consent' OR permitted_use = 'research-by-approval' OR permitted_use = 'withdrawn'),
  earlier_lengthening_elsewhere INTEGER CONSTRAINT person_earlier_lengthening_elsewhere_flag CHECK (earlier_lengthening_elsewhere = 0 OR earlier_lengthening_elsewhere = 1),
  follow_up_status TEXT CONSTRAINT person_follow_up_status_codes CHECK (follow_up_status = 'under-review' OR follow_up_status = 'discharged' OR follow_up_status = 'lost' OR follow_up_status = 'transferred' OR follow_up_status = 'withdrew' OR follow_up_status = 'died'),
  follow_up_status_day INTEGER CONSTRAINT person_follow_up_status_day_days CHECK (follow_up_status_day BETWEEN -100000 AND 22000000),
  line TEXT NOT NULL CONSTRAINT person_line_codes CHECK (line = 'dated' OR line = 'undated'),
  proportion_reference TEXT CONSTRAINT person_proportion_reference_codes CHECK (proportion_reference = 'dry-bone-adults' OR proportion_reference = 'standing-film-adults' OR proportion_reference = 'army-adults'),
  CONSTRAINT person_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER person_closed_once BEFORE UPDATE OF until_batch ON person
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'person: a version is closed once'); END;

CREATE TRIGGER person_never_changed BEFORE UPDATE OF entity, since_batch, unit, sex, indication, aetiology, smoking, diabetes, vitamin_ddeficiency, anti_inflammatory_use, earlier_infection, permitted_use, earlier_lengthening_elsewhere, follow_up_status, follow_up_status_day, line, proportion_reference ON person
BEGIN SELECT RAISE(ABORT, 'person: a version is never changed'); END;

CREATE TRIGGER person_never_deleted BEFORE DELETE ON person
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'person: a version goes by erasure alone'); END;

CREATE TABLE body_measure_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  person_entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  body_day INTEGER NOT NULL CONSTRAINT body_measure_id_body_day_days CHECK (body_day BETWEEN -100000 AND 22000000)
) STRICT;

CREATE UNIQUE INDEX body_measure_id_natural_key ON body_measure_id (person_entity, body_day);

CREATE TRIGGER body_measure_id_never_changed BEFORE UPDATE ON body_measure_id
BEGIN SELECT RAISE(ABORT, 'body_measure_id: an identity is never changed'); END;

CREATE TRIGGER body_measure_id_never_deleted BEFORE DELETE ON body_measure_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'body_measure_id: an identity goes by erasure alone'); END;

CREATE TABLE body_measure (
  entity INTEGER NOT NULL REFERENCES body_measure_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  occasion TEXT CONSTRAINT body_measure_occasion_codes CHECK (occasion = 'before' OR occasion = 'end-of-distraction' OR occasion = 'final' OR occasion = 'other'),
  body_day_from TEXT CONSTRAINT body_measure_body_day_from_codes CHECK (body_day_from = 'recorded' OR body_day_from = 'surgery' OR body_day_from = 'last-follow-up'),
  stature_mm REAL CONSTRAINT body_measure_stature_mm_limits CHECK (stature_mm BETWEEN 700 AND 2500),
  sitting_height_mm REAL CONSTRAINT body_measure_sitting_height_mm_limits CHECK (sitting_height_mm BETWEEN 300 AND 1400),
  arm_span_mm REAL CONSTRAINT body_measure_arm_span_mm_limits CHECK (arm_span_mm BETWEEN 500 AND 2600),
  weight_kg REAL CONSTRAINT body_measure_weight_kg_limits CHECK (weight_kg BETWEEN 5 AND 300),
  stature_how TEXT CONSTRAINT body_measure_stature_how_codes CHECK (stature_how = 'stadiometer' OR stature_how = 'wall' OR stature_how = 'reported' OR stature_how = 'film'),
  femur_left_mm REAL CONSTRAINT body_measure_femur_left_mm_limits CHECK (femur_left_mm BETWEEN 150 AND 700),
  femur_right_mm REAL CONSTRAINT body_measure_femur_right_mm_limits CHECK (femur_right_mm BETWEEN 150 AND 700),
  tibia_left_mm REAL CONSTRAINT body_measure_tibia_left_mm_limits CHECK (tibia_left_mm BETWEEN 120 AND 600),
  tibia_right_mm REAL CONSTRAINT body_measure_tibia_right_mm_limits CHECK (tibia_right_mm BETWEEN 120 AND 600),
  length_method TEXT CONSTRAINT body_measure_length_method_codes CHECK (length_method = 'standing-film' OR length_method = 'ct' OR length_method = 'landmarks-as-for-dry-bone' OR length_method = 'not-stated'),
  CONSTRAINT body_measure_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER body_measure_closed_once BEFORE UPDATE OF until_batch ON body_measure
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'body_measure: a version is closed once'); END;

CREATE TRIGGER body_measure_never_changed BEFORE UPDATE OF entity, since_batch, occasion, body_day_from, stature_mm, sitting_height_mm, arm_span_mm, weight_kg, stature_how, femur_left_mm, femur_right_mm, tibia_left_mm, tibia_right_mm, length_method ON body_measure
BEGIN SELECT RAISE(ABORT, 'body_measure: a version is never changed'); END;

CREATE TRIGGER body_measure_never_deleted BEFORE DELETE ON body_measure
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'body_measure: a version goes by erasure alone'); END;

CREATE TABLE segment_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  person_entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  bone TEXT NOT NULL CONSTRAINT segment_id_bone_codes CHECK (bone = 'femur' OR bone = 'tibia' OR bone = 'humerus' OR bone = 'forearm' OR bone = 'foot-ray' OR bone = 'hand-ray'),
  side TEXT NOT NULL CONSTRAINT segment_id_side_codes CHECK (side = 'left' OR side = 'right'),
  surgery_day INTEGER NOT NULL CONSTRAINT segment_id_surgery_day_days CHECK (surgery_day BETWEEN -100000 AND 22000000),
  UNIQUE (entity, person_entity)
) STRICT;

CREATE UNIQUE INDEX segment_id_natural_key ON segment_id (person_entity, bone, side, surgery_day);

CREATE TRIGGER segment_id_never_changed BEFORE UPDATE ON segment_id
BEGIN SELECT RAISE(ABORT, 'segment_id: an identity is never changed'); END;

CREATE TRIGGER segment_id_never_deleted BEFORE DELETE ON segment_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'segment_id: an identity goes by erasure alone'); END;

CREATE TABLE segment (
  entity INTEGER NOT NULL REFERENCES segment_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  surgery_year INTEGER NOT NULL CONSTRAINT segment_surgery_year_limits CHECK (surgery_year BETWEEN 1970 AND 2100),
  surgery_quarter INTEGER CONSTRAINT segment_surgery_quarter_limits CHECK (surgery_quarter BETWEEN 1 AND 4),
  audit_year INTEGER CONSTRAINT segment_audit_year_limits CHECK (audit_year BETWEEN 1970 AND 2100),
  case_order INTEGER CONSTRAINT segment_case_order_limits CHECK (case_order BETWEEN 1 AND 100000),
  episode INTEGER CONSTRAINT segment_episode_limits CHECK (episode BETWEEN 1 AND 20),
  surgeon TEXT CONSTRAINT segment_surgeon_keyed CHECK (length(surgeon) = 26 AND surgeon NOT GLOB '*[^0-9A-HJKMNP-TV-Z]*'),
  age_at_surgery_years REAL CONSTRAINT segment_age_at_surgery_years_limits CHECK (age_at_surgery_years BETWEEN 1 AND 120),
  arrangement TEXT CONSTRAINT segment_arrangement_codes CHECK (arrangement = 'one-side' OR arrangement = 'both-at-once' OR arrangement = 'one-after-the-other-same-anaesthetic' OR arrangement = 'same-anaesthetic-unknown' OR arrangement = 'same-admission-two-anaesthetics' OR arrangement = 'separate-admissions'),
  nights_in_hospital INTEGER CONSTRAINT segment_nights_in_hospital_limits CHECK (nights_in_hospital BETWEEN 0 AND 365),
  readmitted_within30_days INTEGER CONSTRAINT segment_readmitted_within30_days_flag CHECK (readmitted_within30_days = 0 OR readmitted_within30_days = 1),
  growth_plates TEXT CONSTRAINT segment_growth_plates_codes CHECK (growth_plates = 'open' OR growth_plates = 'closing' OR growth_plates = 'closed'),
  earlier_lengthenings_of_bone INTEGER CONSTRAINT segment_earlier_lengthenings_of_bone_limits CHECK (earlier_lengthenings_of_bone BETWEEN 0 AND 20),
  earlier_infection_here INTEGER CONSTRAINT segment_earlier_infection_here_flag CHECK (earlier_infection_here = 0 OR earlier_infection_here = 1),
  difficulty_score REAL CONSTRAINT segment_difficulty_score_limits CHECK (difficulty_score BETWEEN 0 AND 1000),
  events_looked_for TEXT CONSTRAINT segment_events_looked_for_codes CHECK (events_looked_for = 'fully' OR events_looked_for = 'serious-only' OR events_looked_for = 'not-collected'),
  bone_length_before_mm REAL CONSTRAINT segment_bone_length_before_mm_limits CHECK (bone_length_before_mm BETWEEN 20 AND 700),
  bone_length_final_mm REAL CONSTRAINT segment_bone_length_final_mm_limits CHECK (bone_length_final_mm BETWEEN 20 AND 800),
  bone_length_method TEXT CONSTRAINT segment_bone_length_method_codes CHECK (bone_length_method = 'standing-film' OR bone_length_method = 'ct' OR bone_length_method = 'landmarks-as-for-dry-bone' OR bone_length_method = 'not-stated'),
  procedure TEXT CONSTRAINT segment_procedure_codes CHECK (procedure = 'lengthening' OR procedure = 'transport'),
  device TEXT CONSTRAINT segment_device_codes CHECK (device = 'magnetic-nail' OR device = 'motorised-nail-receiver-under-skin' OR device = 'mechanical-nail' OR device = 'lengthening-over-nail' OR device = 'lengthening-then-nailing' OR device = 'lengthening-then-plating' OR device = 'monolateral-fixator' OR device = 'circular-fixator' OR device = 'hexapod-circular-fixator' OR device = 'lengthening-plate' OR device = 'other'),
  entry TEXT CONSTRAINT segment_entry_codes CHECK (entry = 'piriformis' OR entry = 'trochanteric' OR entry = 'retrograde' OR entry = 'tibial-below-patella' OR entry = 'tibial-above-patella' OR entry = 'not-applicable'),
  nail_diameter_mm REAL CONSTRAINT segment_nail_diameter_mm_limits CHECK (nail_diameter_mm BETWEEN 5 AND 20),
  nail_stroke_mm REAL CONSTRAINT segment_nail_stroke_mm_limits CHECK (nail_stroke_mm BETWEEN 10 AND 200),
  reamed_diameter_mm REAL CONSTRAINT segment_reamed_diameter_mm_limits CHECK (reamed_diameter_mm BETWEEN 5 AND 25),
  canal_diameter_mm REAL CONSTRAINT segment_canal_diameter_mm_limits CHECK (canal_diameter_mm BETWEEN 3 AND 40),
  canal_vented INTEGER CONSTRAINT segment_canal_vented_flag CHECK (canal_vented = 0 OR canal_vented = 1),
  osteotomy_technique TEXT CONSTRAINT segment_osteotomy_technique_codes CHECK (osteotomy_technique = 'drill-and-osteotome' OR osteotomy_technique = 'gigli-saw' OR osteotomy_technique = 'intramedullary-saw' OR osteotomy_technique = 'oscillating-saw' OR osteotomy_technique = 'corticotomy' OR osteotomy_technique = 'other'),
  osteotomy_levels INTEGER CONSTRAINT segment_osteotomy_levels_limits CHECK (osteotomy_levels BETWEEN 1 AND 2),
  osteotomy_site TEXT CONSTRAINT segment_osteotomy_site_codes CHECK (osteotomy_site = 'proximal' OR osteotomy_site = 'middle' OR osteotomy_site = 'distal'),
  osteotomy_from_proximal_mm REAL CONSTRAINT segment_osteotomy_from_proximal_mm_limits CHECK (osteotomy_from_proximal_mm BETWEEN 0 AND 600),
  osteotomy_orientation TEXT CONSTRAINT segment_osteotomy_orientation_codes CHECK (osteotomy_orientation = 'transverse' OR osteotomy_orientation = 'oblique'),
  osteotomy_cooled INTEGER CONSTRAINT segment_osteotomy_cooled_flag CHECK (osteotomy_cooled = 0 OR osteotomy_cooled = 1),
  release_iliotibial_band INTEGER CONSTRAINT segment_release_iliotibial_band_flag CHECK (release_iliotibial_band = 0 OR release_iliotibial_band = 1),
  release_rectus INTEGER CONSTRAINT segment_release_rectus_flag CHECK (release_rectus = 0 OR release_rectus = 1),
  release_adductors INTEGER CONSTRAINT segment_release_adductors_flag CHECK (release_adductors = 0 OR release_adductors = 1),
  release_hamstrings INTEGER CONSTRAINT segment_release_hamstrings_flag CHECK (release_hamstrings = 0 OR release_hamstrings = 1),
  release_gastrocnemius INTEGER CONSTRAINT segment_release_gastrocnemius_flag CHECK (release_gastrocnemius = 0 OR release_gastrocnemius = 1),
  release_peroneal_nerve INTEGER CONSTRAINT segment_release_peroneal_nerve_flag CHECK (release_peroneal_nerve = 0 OR release_peroneal_nerve = 1),
  release_fascia INTEGER CONSTRAINT segment_release_fascia_flag CHECK (release_fascia = 0 OR release_fascia = 1),
  blocking_screws INTEGER CONSTRAINT segment_blocking_screws_limits CHECK (blocking_screws BETWEEN 0 AND 9),
  distraction_tested_on_table INTEGER CONSTRAINT segment_distraction_tested_on_table_flag CHECK (distraction_tested_on_table = 0 OR distraction_tested_on_table = 1),
  reference_pins_for_rotation INTEGER CONSTRAINT segment_reference_pins_for_rotation_flag CHECK (reference_pins_for_rotation = 0 OR reference_pins_for_rotation = 1),
  bone_graft_at_operation INTEGER CONSTRAINT segment_bone_graft_at_operation_flag CHECK (bone_graft_at_operation = 0 OR bone_graft_at_operation = 1),
  rotation_error_deg REAL CONSTRAINT segment_rotation_error_deg_limits CHECK (rotation_error_deg BETWEEN -180 AND 180),
  acute_correction_deg REAL CONSTRAINT segment_acute_correction_deg_limits CHECK (acute_correction_deg BETWEEN -180 AND 180),
  nail_material TEXT CONSTRAINT segment_nail_material_codes CHECK (nail_material = 'titanium-alloy' OR nail_material = 'stainless-steel' OR nail_material = 'other'),
  nail_use TEXT CONSTRAINT segment_nail_use_codes CHECK (nail_use = 'in-canal' OR nail_use = 'outside-canal'),
  gap_at_operation_mm REAL CONSTRAINT segment_gap_at_operation_mm_limits CHECK (gap_at_operation_mm BETWEEN 0 AND 100),
  fibula TEXT CONSTRAINT segment_fibula_codes CHECK (fibula = 'not-cut' OR fibula = 'cut' OR fibula = 'cut-and-fixed-both-ends' OR fibula = 'cut-and-fixed-one-end' OR fibula = 'not-applicable'),
  joint_guarded TEXT CONSTRAINT segment_joint_guarded_codes CHECK (joint_guarded = 'none' OR joint_guarded = 'splint' OR joint_guarded = 'foot-in-frame' OR joint_guarded = 'temporary-screw' OR joint_guarded = 'spanning-frame'),
  release_when TEXT CONSTRAINT segment_release_when_codes CHECK (release_when = 'before' OR release_when = 'at-operation' OR release_when = 'during-distraction'),
  planned_gain_mm REAL CONSTRAINT segment_planned_gain_mm_limits CHECK (planned_gain_mm BETWEEN 0 AND 250),
  planned_gain_final_mm REAL CONSTRAINT segment_planned_gain_final_mm_limits CHECK (planned_gain_final_mm BETWEEN 0 AND 250),
  plan_change_reason TEXT CONSTRAINT segment_plan_change_reason_codes CHECK (plan_change_reason = 'goal-reached-early' OR plan_change_reason = 'stiffness' OR plan_change_reason = 'nerve' OR plan_change_reason = 'pain' OR plan_change_reason = 'poor-regenerate' OR plan_change_reason = 'patient-wish' OR plan_change_reason = 'device' OR plan_change_reason = 'other'),
  prescribed_rate_mm_per_day REAL CONSTRAINT segment_prescribed_rate_mm_per_day_limits CHECK (prescribed_rate_mm_per_day BETWEEN 0.05 AND 4),
  prescribed_steps_per_day INTEGER CONSTRAINT segment_prescribed_steps_per_day_limits CHECK (prescribed_steps_per_day BETWEEN 1 AND 1440),
  planned_days_to_consolidation INTEGER CONSTRAINT segment_planned_days_to_consolidation_limits CHECK (planned_days_to_consolidation BETWEEN 1 AND 3000),
  days_paused INTEGER CONSTRAINT segment_days_paused_limits CHECK (days_paused BETWEEN 0 AND 730),
  reversed_mm REAL CONSTRAINT segment_reversed_mm_limits CHECK (reversed_mm BETWEEN 0 AND 250),
  stimulation TEXT CONSTRAINT segment_stimulation_codes CHECK (stimulation = 'none' OR stimulation = 'graft' OR stimulation = 'marrow-or-cell-injection' OR stimulation = 'drug' OR stimulation = 'ultrasound' OR stimulation = 'dynamisation' OR stimulation = 'several'),
  film_calibrated INTEGER CONSTRAINT segment_film_calibrated_flag CHECK (film_calibrated = 0 OR film_calibrated = 1),
  distraction_start_day INTEGER CONSTRAINT segment_distraction_start_day_days CHECK (distraction_start_day BETWEEN -100000 AND 22000000),
  distraction_end_day INTEGER CONSTRAINT segment_distraction_end_day_days CHECK (distraction_end_day BETWEEN -100000 AND 22000000),
  last_not_healed_day INTEGER CONSTRAINT segment_last_not_healed_day_days CHECK (last_not_healed_day BETWEEN -100000 AND 22000000),
  last_film_day INTEGER CONSTRAINT segment_last_film_day_days CHECK (last_film_day BETWEEN -100000 AND 22000000),
  rescue_day INTEGER CONSTRAINT segment_rescue_day_days CHECK (rescue_day BETWEEN -100000 AND 22000000),
  consolidation_day INTEGER CONSTRAINT segment_consolidation_day_days CHECK (consolidation_day BETWEEN -100000 AND 22000000),
  full_weight_bearing_day INTEGER CONSTRAINT segment_full_weight_bearing_day_days CHECK (full_weight_bearing_day BETWEEN -100000 AND 22000000),
  fixator_removal_day INTEGER CONSTRAINT segment_fixator_removal_day_days CHECK (fixator_removal_day BETWEEN -100000 AND 22000000),
  implant_removal_day INTEGER CONSTRAINT segment_implant_removal_day_days CHECK (implant_removal_day BETWEEN -100000 AND 22000000),
  last_follow_up_day INTEGER CONSTRAINT segment_last_follow_up_day_days CHECK (last_follow_up_day BETWEEN -100000 AND 22000000),
  consolidation_criterion TEXT CONSTRAINT segment_consolidation_criterion_codes CHECK (consolidation_criterion = 'three-of-four' OR consolidation_criterion = 'four-of-four' OR consolidation_criterion = 'two-of-four' OR consolidation_criterion = 'pixel-value-ratio' OR consolidation_criterion = 'ct' OR consolidation_criterion = 'surgeon-judgement' OR consolidation_criterion = 'frame-removal-proxy' OR consolidation_criterion = 'not-stated'),
  end_state TEXT CONSTRAINT segment_end_state_codes CHECK (end_state = 'healing' OR end_state = 'consolidated' OR end_state = 'abandoned' OR end_state = 'healed-after-bone-surgery' OR end_state = 'nonunion' OR end_state = 'amputated'),
  implant_out_reason TEXT CONSTRAINT segment_implant_out_reason_codes CHECK (implant_out_reason = 'planned' OR implant_out_reason = 'infection' OR implant_out_reason = 'breakage' OR implant_out_reason = 'exchange' OR implant_out_reason = 'intolerance' OR implant_out_reason = 'other' OR implant_out_reason = 'left-in-by-choice'),
  result_bone TEXT CONSTRAINT segment_result_bone_codes CHECK (result_bone = 'excellent' OR result_bone = 'good' OR result_bone = 'fair' OR result_bone = 'poor'),
  result_function TEXT CONSTRAINT segment_result_function_codes CHECK (result_function = 'excellent' OR result_function = 'good' OR result_function = 'fair' OR result_function = 'poor'),
  gain_mm REAL CONSTRAINT segment_gain_mm_limits CHECK (gain_mm BETWEEN 0 AND 250),
  gain_final_mm REAL CONSTRAINT segment_gain_final_mm_limits CHECK (gain_final_mm BETWEEN 0 AND 250),
  axis_deviation_before_mm REAL CONSTRAINT segment_axis_deviation_before_mm_limits CHECK (axis_deviation_before_mm BETWEEN -300 AND 300),
  axis_deviation_final_mm REAL CONSTRAINT segment_axis_deviation_final_mm_limits CHECK (axis_deviation_final_mm BETWEEN -300 AND 300),
  mldfa_before_deg REAL CONSTRAINT segment_mldfa_before_deg_limits CHECK (mldfa_before_deg BETWEEN -180 AND 180),
  mldfa_final_deg REAL CONSTRAINT segment_mldfa_final_deg_limits CHECK (mldfa_final_deg BETWEEN -180 AND 180),
  mpta_before_deg REAL CONSTRAINT segment_mpta_before_deg_limits CHECK (mpta_before_deg BETWEEN -180 AND 180),
  mpta_final_deg REAL CONSTRAINT segment_mpta_final_deg_limits CHECK (mpta_final_deg BETWEEN -180 AND 180),
  sagittal_angulation_final_deg REAL CONSTRAINT segment_sagittal_angulation_final_deg_limits CHECK (sagittal_angulation_final_deg BETWEEN -180 AND 180),
  rotation_difference_final_deg REAL CONSTRAINT segment_rotation_difference_final_deg_limits CHECK (rotation_difference_final_deg BETWEEN -180 AND 180),
  difference_before_mm REAL CONSTRAINT segment_difference_before_mm_limits CHECK (difference_before_mm BETWEEN -400 AND 400),
  difference_target_mm REAL CONSTRAINT segment_difference_target_mm_limits CHECK (difference_target_mm BETWEEN -400 AND 400),
  difference_final_mm REAL CONSTRAINT segment_difference_final_mm_limits CHECK (difference_final_mm BETWEEN -400 AND 400),
  CONSTRAINT segment_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER segment_closed_once BEFORE UPDATE OF until_batch ON segment
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'segment: a version is closed once'); END;

CREATE TRIGGER segment_never_changed BEFORE UPDATE OF entity, since_batch, surgery_year, surgery_quarter, audit_year, case_order, episode, surgeon, age_at_surgery_years, arrangement, nights_in_hospital, readmitted_within30_days, growth_plates, earlier_lengthenings_of_bone, earlier_infection_here, difficulty_score, events_looked_for, bone_length_before_mm, bone_length_final_mm, bone_length_method, procedure, device, entry, nail_diameter_mm, nail_stroke_mm, reamed_diameter_mm, canal_diameter_mm, canal_vented, osteotomy_technique, osteotomy_levels, osteotomy_site, osteotomy_from_proximal_mm, osteotomy_orientation, osteotomy_cooled, release_iliotibial_band, release_rectus, release_adductors, release_hamstrings, release_gastrocnemius, release_peroneal_nerve, release_fascia, blocking_screws, distraction_tested_on_table, reference_pins_for_rotation, bone_graft_at_operation, rotation_error_deg, acute_correction_deg, nail_material, nail_use, gap_at_operation_mm, fibula, joint_guarded, release_when, planned_gain_mm, planned_gain_final_mm, plan_change_reason, prescribed_rate_mm_per_day, prescribed_steps_per_day, planned_days_to_consolidation, days_paused, reversed_mm, stimulation, film_calibrated, distraction_start_day, distraction_end_day, last_not_healed_day, last_film_day, rescue_day, consolidation_day, full_weight_bearing_day, fixator_removal_day, implant_removal_day, last_follow_up_day, consolidation_criterion, end_state, implant_out_reason, result_bone, result_function, gain_mm, gain_final_mm, axis_deviation_before_mm, axis_deviation_final_mm, mldfa_before_deg, mldfa_final_deg, mpta_before_deg, mpta_final_deg, sagittal_angulation_final_deg, rotation_difference_final_deg, difference_before_mm, difference_target_mm, difference_final_mm ON segment
BEGIN SELECT RAISE(ABORT, 'segment: a version is never changed'); END;

CREATE TRIGGER segment_never_deleted BEFORE DELETE ON segment
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'segment: a version goes by erasure alone'); END;

CREATE TABLE visit_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  segment_entity INTEGER NOT NULL REFERENCES segment_id (entity) ON DELETE RESTRICT,
  visit_day INTEGER NOT NULL CONSTRAINT visit_id_visit_day_days CHECK (visit_day BETWEEN -100000 AND 22000000)
) STRICT;

CREATE UNIQUE INDEX visit_id_natural_key ON visit_id (segment_entity, visit_day);

CREATE TRIGGER visit_id_never_changed BEFORE UPDATE ON visit_id
BEGIN SELECT RAISE(ABORT, 'visit_id: an identity is never changed'); END;

CREATE TRIGGER visit_id_never_deleted BEFORE DELETE ON visit_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'visit_id: an identity goes by erasure alone'); END;

CREATE TABLE visit (
  entity INTEGER NOT NULL REFERENCES visit_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  distracted_mm REAL CONSTRAINT visit_distracted_mm_limits CHECK (distracted_mm BETWEEN 0 AND 300),
  distracted_by TEXT CONSTRAINT visit_distracted_by_codes CHECK (distracted_by = 'film' OR distracted_by = 'dial'),
  cortices INTEGER CONSTRAINT visit_cortices_limits CHECK (cortices BETWEEN 0 AND 4),
  weight_bearing TEXT CONSTRAINT visit_weight_bearing_codes CHECK (weight_bearing = 'none' OR weight_bearing = 'toe-touch' OR weight_bearing = 'partial' OR weight_bearing = 'full'),
  knee_flexion_deg REAL CONSTRAINT visit_knee_flexion_deg_limits CHECK (knee_flexion_deg BETWEEN -90 AND 180),
  knee_extension_deg REAL CONSTRAINT visit_knee_extension_deg_limits CHECK (knee_extension_deg BETWEEN -90 AND 180),
  hip_flexion_deg REAL CONSTRAINT visit_hip_flexion_deg_limits CHECK (hip_flexion_deg BETWEEN -90 AND 180),
  hip_extension_deg REAL CONSTRAINT visit_hip_extension_deg_limits CHECK (hip_extension_deg BETWEEN -90 AND 180),
  ankle_dorsiflexion_deg REAL CONSTRAINT visit_ankle_dorsiflexion_deg_limits CHECK (ankle_dorsiflexion_deg BETWEEN -90 AND 180),
  pain_at_rest INTEGER CONSTRAINT visit_pain_at_rest_limits CHECK (pain_at_rest BETWEEN 0 AND 10),
  pain_on_activity INTEGER CONSTRAINT visit_pain_on_activity_limits CHECK (pain_on_activity BETWEEN 0 AND 10),
  analgesia TEXT CONSTRAINT visit_analgesia_codes CHECK (analgesia = 'none' OR analgesia = 'simple' OR analgesia = 'anti-inflammatory' OR analgesia = 'weak-opioid' OR analgesia = 'strong-opioid'),
  nerve TEXT CONSTRAINT visit_nerve_codes CHECK (nerve = 'none' OR nerve = 'sensory' OR nerve = 'motor' OR nerve = 'pain-of-nerve-type'),
  joint_position TEXT CONSTRAINT visit_joint_position_codes CHECK (joint_position = 'in-place' OR joint_position = 'subluxed' OR joint_position = 'dislocated'),
  callus_shape TEXT CONSTRAINT visit_callus_shape_codes CHECK (callus_shape = 'fusiform' OR callus_shape = 'cylindrical' OR callus_shape = 'concave' OR callus_shape = 'lateral' OR callus_shape = 'central' OR callus_shape = 'atypical'),
  callus_type INTEGER CONSTRAINT visit_callus_type_limits CHECK (callus_type BETWEEN 1 AND 10),
  pin_site_grade INTEGER CONSTRAINT visit_pin_site_grade_limits CHECK (pin_site_grade BETWEEN 0 AND 10),
  read_by TEXT CONSTRAINT visit_read_by_codes CHECK (read_by = 'operator' OR read_by = 'other' OR read_by = 'panel'),
  CONSTRAINT visit_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER visit_closed_once BEFORE UPDATE OF until_batch ON visit
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'visit: a version is closed once'); END;

CREATE TRIGGER visit_never_changed BEFORE UPDATE OF entity, since_batch, distracted_mm, distracted_by, cortices, weight_bearing, knee_flexion_deg, knee_extension_deg, hip_flexion_deg, hip_extension_deg, ankle_dorsiflexion_deg, pain_at_rest, pain_on_activity, analgesia, nerve, joint_position, callus_shape, callus_type, pin_site_grade, read_by ON visit
BEGIN SELECT RAISE(ABORT, 'visit: a version is never changed'); END;

CREATE TRIGGER visit_never_deleted BEFORE DELETE ON visit
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'visit: a version goes by erasure alone'); END;

CREATE TABLE event_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  person_entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  segment_entity INTEGER,
  event_type TEXT NOT NULL CONSTRAINT event_id_event_type_codes CHECK (event_type = 'muscle-contracture' OR event_type = 'equinus' OR event_type = 'tendon-injury' OR event_type = 'skin-necrosis-or-invagination' OR event_type = 'compartment-syndrome' OR event_type = 'haematoma' OR event_type = 'wound-dehiscence' OR event_type = 'scar' OR event_type = 'heterotopic-ossification' OR event_type = 'stiffness' OR event_type = 'joint-contracture' OR event_type = 'subluxation' OR event_type = 'dislocation' OR event_type = 'cartilage-damage' OR event_type = 'patellar-instability' OR event_type = 'ligament-laxity' OR event_type = 'arterial-injury' OR event_type = 'deep-vein-thrombosis' OR event_type = 'pulmonary-embolism' OR event_type = 'fat-embolism' OR event_type = 'bleeding-transfused' OR event_type = 'premature-consolidation' OR event_type = 'fibular-premature-consolidation' OR event_type = 'incomplete-osteotomy' OR event_type = 'delayed-union' OR event_type = 'nonunion' OR event_type = 'insufficient-regenerate' OR event_type = 'axial-deviation' OR event_type = 'malrotation' OR event_type = 'translation' OR event_type = 'regenerate-fracture' OR event_type = 'other-fracture' OR event_type = 'length-loss' OR event_type = 'over-lengthening' OR event_type = 'fibular-migration' OR event_type = 'bone-necrosis' OR event_type = 'osteolysis' OR event_type = 'fracture-in-theatre' OR event_type = 'sensory-deficit' OR event_type = 'motor-deficit' OR event_type = 'peroneal-palsy' OR event_type = 'complex-regional-pain' OR event_type = 'paraparesis' OR event_type = 'pin-site-infection' OR event_type = 'superficial-infection' OR event_type = 'deep-infection' OR event_type = 'osteomyelitis' OR event_type = 'implant-infection' OR event_type = 'sepsis' OR event_type = 'mechanism-failure' OR event_type = 'runaway' OR event_type = 'failure-to-distract' OR event_type = 'backtracking' OR event_type = 'nail-bent' OR event_type = 'nail-broken' OR event_type = 'locking-screw-failure' OR event_type = 'pin-or-wire-broken' OR event_type = 'pin-loose' OR event_type = 'frame-unstable' OR event_type = 'corrosion' OR event_type = 'controller-failure' OR event_type = 'implant-migration' OR event_type = 'pain-changing-plan' OR event_type = 'sleep-disturbance' OR event_type = 'psychological' OR event_type = 'anaesthetic' OR event_type = 'medical' OR event_type = 'weight-loss' OR event_type = 'stopped-by-patient' OR event_type = 'death-any-cause' OR event_type = 'other-event'),
  onset_day INTEGER CONSTRAINT event_id_onset_day_days CHECK (onset_day BETWEEN -100000 AND 22000000),
  event_number INTEGER NOT NULL CONSTRAINT event_id_event_number_limits CHECK (event_number BETWEEN 1 AND 99),
  FOREIGN KEY (segment_entity, person_entity) REFERENCES segment_id (entity, person_entity) ON DELETE RESTRICT
) STRICT;

CREATE UNIQUE INDEX event_id_natural_key ON event_id (person_entity, ifnull(segment_entity, 0), event_type, ifnull(onset_day, ''), event_number);

CREATE INDEX event_id_segment ON event_id (segment_entity);

CREATE TRIGGER event_id_never_changed BEFORE UPDATE ON event_id
BEGIN SELECT RAISE(ABORT, 'event_id: an identity is never changed'); END;

CREATE TRIGGER event_id_never_deleted BEFORE DELETE ON event_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'event_id: an identity goes by erasure alone'); END;

CREATE TABLE event (
  entity INTEGER NOT NULL REFERENCES event_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  phase TEXT CONSTRAINT event_phase_codes CHECK (phase = 'in-theatre' OR phase = 'latency' OR phase = 'distraction' OR phase = 'consolidation' OR phase = 'after'),
  handling TEXT CONSTRAINT event_handling_codes CHECK (handling = 'nothing' OR handling = 'advice-or-physiotherapy' OR handling = 'programme-changed' OR handling = 'oral-drug' OR handling = 'intravenous-drug' OR handling = 'procedure-without-anaesthesia' OR handling = 'operation-under-anaesthesia' OR handling = 'implant-exchanged' OR handling = 'intensive-care'),
  planned INTEGER CONSTRAINT event_planned_flag CHECK (planned = 0 OR planned = 1),
  plan_changed INTEGER CONSTRAINT event_plan_changed_flag CHECK (plan_changed = 0 OR plan_changed = 1),
  resolved INTEGER CONSTRAINT event_resolved_flag CHECK (resolved = 0 OR resolved = 1),
  goal_missed INTEGER CONSTRAINT event_goal_missed_flag CHECK (goal_missed = 0 OR goal_missed = 1),
  life_or_limb_threat INTEGER CONSTRAINT event_life_or_limb_threat_flag CHECK (life_or_limb_threat = 0 OR life_or_limb_threat = 1),
  death INTEGER CONSTRAINT event_death_flag CHECK (death = 0 OR death = 1),
  resolved_day INTEGER CONSTRAINT event_resolved_day_days CHECK (resolved_day BETWEEN -100000 AND 22000000),
  sequela TEXT CONSTRAINT event_sequela_codes CHECK (sequela = 'none' OR sequela = 'temporary' OR sequela = 'permanent'),
  purpose TEXT CONSTRAINT event_purpose_codes CHECK (purpose = 'regenerate-healing' OR purpose = 'joint' OR purpose = 'device' OR purpose = 'infection' OR purpose = 'nerve' OR purpose = 'other'),
  consequence_of TEXT CONSTRAINT event_consequence_of_codes CHECK (consequence_of = 'muscle-contracture' OR consequence_of = 'equinus' OR consequence_of = 'tendon-injury' OR consequence_of = 'skin-necrosis-or-invagination' OR consequence_of = 'compartment-syndrome' OR consequence_of = 'haematoma' OR consequence_of = 'wound-dehiscence' OR consequence_of = 'scar' OR consequence_of = 'heterotopic-ossification' OR consequence_of = 'stiffness' OR consequence_of = 'joint-contracture' OR consequence_of = 'subluxation' OR consequence_of = 'dislocation' OR consequence_of = 'cartilage-damage' OR consequence_of = 'patellar-instability' OR consequence_of = 'ligament-laxity' OR consequence_of = 'arterial-injury' OR consequence_of = 'deep-vein-thrombosis' OR consequence_of = 'pulmonary-embolism' OR consequence_of = 'fat-embolism' OR consequence_of = 'bleeding-transfused' OR consequence_of = 'premature-consolidation' OR consequence_of = 'fibular-premature-consolidation' OR consequence_of = 'incomplete-osteotomy' OR consequence_of = 'delayed-union' OR consequence_of = 'nonunion' OR consequence_of = 'insufficient-regenerate' OR consequence_of = 'axial-deviation' OR consequence_of = 'malrotation' OR consequence_of = 'translation' OR consequence_of = 'regenerate-fracture' OR consequence_of = 'other-fracture' OR consequence_of = 'length-loss' OR consequence_of = 'over-lengthening' OR consequence_of = 'fibular-migration' OR consequence_of = 'bone-necrosis' OR consequence_of = 'osteolysis' OR consequence_of = 'fracture-in-theatre' OR consequence_of = 'sensory-deficit' OR consequence_of = 'motor-deficit' OR consequence_of = 'peroneal-palsy' OR consequence_of = 'complex-regional-pain' OR consequence_of = 'paraparesis' OR consequence_of = 'pin-site-infection' OR consequence_of = 'superficial-infection' OR consequence_of = 'deep-infection' OR consequence_of = 'osteomyelitis' OR consequence_of = 'implant-infection' OR consequence_of = 'sepsis' OR consequence_of = 'mechanism-failure' OR consequence_of = 'runaway' OR consequence_of = 'failure-to-distract' OR consequence_of = 'backtracking' OR consequence_of = 'nail-bent' OR consequence_of = 'nail-broken' OR consequence_of = 'locking-screw-failure' OR consequence_of = 'pin-or-wire-broken' OR consequence_of = 'pin-loose' OR consequence_of = 'frame-unstable' OR consequence_of = 'corrosion' OR consequence_of = 'controller-failure' OR consequence_of = 'implant-migration' OR consequence_of = 'pain-changing-plan' OR consequence_of = 'sleep-disturbance' OR consequence_of = 'psychological' OR consequence_of = 'anaesthetic' OR consequence_of = 'medical' OR consequence_of = 'weight-loss' OR consequence_of = 'stopped-by-patient' OR consequence_of = 'death-any-cause' OR consequence_of = 'other-event'),
  found_by TEXT CONSTRAINT event_found_by_codes CHECK (found_by = 'form' OR found_by = 'notes' OR found_by = 'theatre-log'),
  classed_by TEXT CONSTRAINT event_classed_by_codes CHECK (classed_by = 'operator' OR classed_by = 'other-surgeon' OR classed_by = 'panel'),
  reported_officially TEXT CONSTRAINT event_reported_officially_codes CHECK (reported_officially = 'yes' OR reported_officially = 'no' OR reported_officially = 'not-needed'),
  class_problem_obstacle TEXT CONSTRAINT event_class_problem_obstacle_codes CHECK (class_problem_obstacle = 'problem' OR class_problem_obstacle = 'obstacle' OR class_problem_obstacle = 'complication-minor' OR class_problem_obstacle = 'complication-major'),
  class_triple_contract TEXT CONSTRAINT event_class_triple_contract_codes CHECK (class_triple_contract = 'i' OR class_triple_contract = 'ii' OR class_triple_contract = 'iii' OR class_triple_contract = 'iv'),
  class_three_level TEXT CONSTRAINT event_class_three_level_codes CHECK (class_three_level = 'minor' OR class_three_level = 'serious' OR class_three_level = 'severe'),
  class_severity TEXT CONSTRAINT event_class_severity_codes CHECK (class_severity = 'i' OR class_severity = 'ii' OR class_severity = 'iiia' OR class_severity = 'iiib'),
  class_surgical TEXT CONSTRAINT event_class_surgical_codes CHECK (class_surgical = 'i' OR class_surgical = 'ii' OR class_surgical = 'iii' OR class_surgical = 'iva' OR class_surgical = 'ivb' OR class_surgical = 'v'),
  class_device TEXT CONSTRAINT event_class_device_codes CHECK (class_device = 'ia' OR class_device = 'ib' OR class_device = 'ic' OR class_device = 'iia' OR class_device = 'iib' OR class_device = 'iic' OR class_device = 'iiia' OR class_device = 'iiib' OR class_device = 'iiic'),
  CONSTRAINT event_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER event_closed_once BEFORE UPDATE OF until_batch ON event
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'event: a version is closed once'); END;

CREATE TRIGGER event_never_changed BEFORE UPDATE OF entity, since_batch, phase, handling, planned, plan_changed, resolved, goal_missed, life_or_limb_threat, death, resolved_day, sequela, purpose, consequence_of, found_by, classed_by, reported_officially, class_problem_obstacle, class_triple_contract, class_three_level, class_severity, class_surgical, class_device ON event
BEGIN SELECT RAISE(ABORT, 'event: a version is never changed'); END;

CREATE TRIGGER event_never_deleted BEFORE DELETE ON event
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'event: a version goes by erasure alone'); END;

CREATE TABLE score_id (
  entity INTEGER PRIMARY KEY AUTOINCREMENT,
  person_entity INTEGER NOT NULL REFERENCES person_id (entity) ON DELETE RESTRICT,
  score_code TEXT NOT NULL CONSTRAINT score_id_score_code_listed CHECK (length(score_code) BETWEEN 2 AND 32 AND score_code GLOB '[a-z]*' AND score_code NOT GLOB '*[^a-z0-9-]*'),
  score_day INTEGER NOT NULL CONSTRAINT score_id_score_day_days CHECK (score_day BETWEEN -100000 AND 22000000)
) STRICT;

CREATE UNIQUE INDEX score_id_natural_key ON score_id (person_entity, score_code, score_day);

CREATE TRIGGER score_id_never_changed BEFORE UPDATE ON score_id
BEGIN SELECT RAISE(ABORT, 'score_id: an identity is never changed'); END;

CREATE TRIGGER score_id_never_deleted BEFORE DELETE ON score_id
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'score_id: an identity goes by erasure alone'); END;

CREATE TABLE score (
  entity INTEGER NOT NULL REFERENCES score_id (entity) ON DELETE RESTRICT,
  since_batch INTEGER NOT NULL,
  until_batch INTEGER NOT NULL,
  score_value REAL NOT NULL CONSTRAINT score_score_value_limits CHECK (score_value BETWEEN -1000 AND 1000),
  CONSTRAINT score_span CHECK (since_batch >= 1 AND since_batch < until_batch AND until_batch <= 2147483647),
  PRIMARY KEY (entity, since_batch),
  UNIQUE (entity, until_batch)
) STRICT;

CREATE TRIGGER score_closed_once BEFORE UPDATE OF until_batch ON score
WHEN OLD.until_batch <> 2147483647 OR NEW.until_batch = 2147483647
BEGIN SELECT RAISE(ABORT, 'score: a version is closed once'); END;

CREATE TRIGGER score_never_changed BEFORE UPDATE OF entity, since_batch, score_value ON score
BEGIN SELECT RAISE(ABORT, 'score: a version is never changed'); END;

CREATE TRIGGER score_never_deleted BEFORE DELETE ON score
WHEN (SELECT running FROM erasure) = 0
BEGIN SELECT RAISE(ABORT, 'score: a version goes by erasure alone'); END;
