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
  sex TEXT CONSTRAINT person_sex_codes CHECK (sex IN ('female', 'male', 'other', 'unknown')),
  indication TEXT CONSTRAINT person_indication_codes CHECK (indication IN ('stature', 'limb-length-discrepancy', 'deformity-with-shortening', 'bone-loss')),
  aetiology TEXT CONSTRAINT person_aetiology_codes CHECK (aetiology IN ('constitutional-short-stature', 'idiopathic-short-stature', 'achondroplasia', 'hypochondroplasia', 'other-dysplasia', 'turner', 'growth-hormone-deficiency', 'small-for-gestational-age', 'congenital-femoral-deficiency', 'fibular-hemimelia', 'tibial-hemimelia', 'hemihypertrophy', 'post-traumatic', 'post-infective', 'growth-arrest', 'blount', 'enchondromatosis', 'neurological', 'other', 'unknown')),
  smoking TEXT CONSTRAINT person_smoking_codes CHECK (smoking IN ('now', 'ever', 'never', 'unknown')),
  diabetes INTEGER CONSTRAINT person_diabetes_flag CHECK (diabetes IN (0, 1)),
  vitamin_ddeficiency INTEGER CONSTRAINT person_vitamin_ddeficiency_flag CHECK (vitamin_ddeficiency IN (0, 1)),
  anti_inflammatory_use INTEGER CONSTRAINT person_anti_inflammatory_use_flag CHECK (anti_inflammatory_use IN (0, 1)),
  earlier_infection INTEGER CONSTRAINT person_earlier_infection_flag CHECK (earlier_infection IN (0, 1)),
  permitted_use TEXT CONSTRAINT person_permitted_use_codes CHECK (permitted_use IN ('audit-only', 'research-with-consent', 'research-by-approval', 'withdrawn')),
  earlier_lengthening_elsewhere INTEGER CONSTRAINT person_earlier_lengthening_elsewhere_flag CHECK (earlier_lengthening_elsewhere IN (0, 1)),
  follow_up_status TEXT CONSTRAINT person_follow_up_status_codes CHECK (follow_up_status IN ('under-review', 'discharged', 'lost', 'transferred', 'withdrew', 'died')),
  follow_up_status_day INTEGER CONSTRAINT person_follow_up_status_day_days CHECK (follow_up_status_day BETWEEN -100000 AND 22000000),
  line TEXT NOT NULL CONSTRAINT person_line_codes CHECK (line IN ('dated', 'undated')),
  proportion_reference TEXT CONSTRAINT person_proportion_reference_listed CHECK (length(proportion_reference) BETWEEN 2 AND 41 AND proportion_reference GLOB '[a-z]*' AND proportion_reference NOT GLOB '*[^a-z0-9-]*'),
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
  occasion TEXT CONSTRAINT body_measure_occasion_codes CHECK (occasion IN ('before', 'end-of-distraction', 'final', 'other')),
  body_day_from TEXT CONSTRAINT body_measure_body_day_from_codes CHECK (body_day_from IN ('recorded', 'surgery', 'last-follow-up')),
  stature_mm REAL CONSTRAINT body_measure_stature_mm_limits CHECK (stature_mm BETWEEN 700 AND 2500),
  sitting_height_mm REAL CONSTRAINT body_measure_sitting_height_mm_limits CHECK (sitting_height_mm BETWEEN 300 AND 1400),
  arm_span_mm REAL CONSTRAINT body_measure_arm_span_mm_limits CHECK (arm_span_mm BETWEEN 500 AND 2600),
  weight_kg REAL CONSTRAINT body_measure_weight_kg_limits CHECK (weight_kg BETWEEN 5 AND 300),
  stature_how TEXT CONSTRAINT body_measure_stature_how_codes CHECK (stature_how IN ('stadiometer', 'wall', 'reported', 'film')),
  femur_left_mm REAL CONSTRAINT body_measure_femur_left_mm_limits CHECK (femur_left_mm BETWEEN 150 AND 700),
  femur_right_mm REAL CONSTRAINT body_measure_femur_right_mm_limits CHECK (femur_right_mm BETWEEN 150 AND 700),
  tibia_left_mm REAL CONSTRAINT body_measure_tibia_left_mm_limits CHECK (tibia_left_mm BETWEEN 120 AND 600),
  tibia_right_mm REAL CONSTRAINT body_measure_tibia_right_mm_limits CHECK (tibia_right_mm BETWEEN 120 AND 600),
  length_method TEXT CONSTRAINT body_measure_length_method_codes CHECK (length_method IN ('standing-film', 'ct', 'landmarks-as-for-dry-bone', 'not-stated')),
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
  bone TEXT NOT NULL CONSTRAINT segment_id_bone_codes CHECK (bone IN ('femur', 'tibia', 'humerus', 'forearm', 'foot-ray', 'hand-ray')),
  side TEXT NOT NULL CONSTRAINT segment_id_side_codes CHECK (side IN ('left', 'right')),
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
  arrangement TEXT CONSTRAINT segment_arrangement_codes CHECK (arrangement IN ('one-side', 'both-at-once', 'one-after-the-other-same-anaesthetic', 'same-anaesthetic-unknown', 'same-admission-two-anaesthetics', 'separate-admissions')),
  nights_in_hospital INTEGER CONSTRAINT segment_nights_in_hospital_limits CHECK (nights_in_hospital BETWEEN 0 AND 365),
  readmitted_within30_days INTEGER CONSTRAINT segment_readmitted_within30_days_flag CHECK (readmitted_within30_days IN (0, 1)),
  growth_plates TEXT CONSTRAINT segment_growth_plates_codes CHECK (growth_plates IN ('open', 'closing', 'closed')),
  earlier_lengthenings_of_bone INTEGER CONSTRAINT segment_earlier_lengthenings_of_bone_limits CHECK (earlier_lengthenings_of_bone BETWEEN 0 AND 20),
  earlier_infection_here INTEGER CONSTRAINT segment_earlier_infection_here_flag CHECK (earlier_infection_here IN (0, 1)),
  difficulty_score REAL CONSTRAINT segment_difficulty_score_limits CHECK (difficulty_score BETWEEN 0 AND 1000),
  events_looked_for TEXT CONSTRAINT segment_events_looked_for_codes CHECK (events_looked_for IN ('fully', 'serious-only', 'not-collected')),
  bone_length_before_mm REAL CONSTRAINT segment_bone_length_before_mm_limits CHECK (bone_length_before_mm BETWEEN 20 AND 700),
  bone_length_final_mm REAL CONSTRAINT segment_bone_length_final_mm_limits CHECK (bone_length_final_mm BETWEEN 20 AND 800),
  bone_length_method TEXT CONSTRAINT segment_bone_length_method_codes CHECK (bone_length_method IN ('standing-film', 'ct', 'landmarks-as-for-dry-bone', 'not-stated')),
  procedure TEXT CONSTRAINT segment_procedure_codes CHECK (procedure IN ('lengthening', 'transport')),
  device TEXT CONSTRAINT segment_device_codes CHECK (device IN ('magnetic-nail', 'motorised-nail-receiver-under-skin', 'mechanical-nail', 'lengthening-over-nail', 'lengthening-then-nailing', 'lengthening-then-plating', 'monolateral-fixator', 'circular-fixator', 'hexapod-circular-fixator', 'lengthening-plate', 'other')),
  entry TEXT CONSTRAINT segment_entry_codes CHECK (entry IN ('piriformis', 'trochanteric', 'retrograde', 'tibial-below-patella', 'tibial-above-patella', 'not-applicable')),
  nail_diameter_mm REAL CONSTRAINT segment_nail_diameter_mm_limits CHECK (nail_diameter_mm BETWEEN 5 AND 20),
  nail_stroke_mm REAL CONSTRAINT segment_nail_stroke_mm_limits CHECK (nail_stroke_mm BETWEEN 10 AND 200),
  reamed_diameter_mm REAL CONSTRAINT segment_reamed_diameter_mm_limits CHECK (reamed_diameter_mm BETWEEN 5 AND 25),
  canal_diameter_mm REAL CONSTRAINT segment_canal_diameter_mm_limits CHECK (canal_diameter_mm BETWEEN 3 AND 40),
  canal_vented INTEGER CONSTRAINT segment_canal_vented_flag CHECK (canal_vented IN (0, 1)),
  osteotomy_technique TEXT CONSTRAINT segment_osteotomy_technique_codes CHECK (osteotomy_technique IN ('drill-and-osteotome', 'gigli-saw', 'intramedullary-saw', 'oscillating-saw', 'corticotomy', 'other')),
  osteotomy_levels INTEGER CONSTRAINT segment_osteotomy_levels_limits CHECK (osteotomy_levels BETWEEN 1 AND 2),
  osteotomy_site TEXT CONSTRAINT segment_osteotomy_site_codes CHECK (osteotomy_site IN ('proximal', 'middle', 'distal')),
  osteotomy_from_proximal_mm REAL CONSTRAINT segment_osteotomy_from_proximal_mm_limits CHECK (osteotomy_from_proximal_mm BETWEEN 0 AND 600),
  osteotomy_orientation TEXT CONSTRAINT segment_osteotomy_orientation_codes CHECK (osteotomy_orientation IN ('transverse', 'oblique')),
  osteotomy_cooled INTEGER CONSTRAINT segment_osteotomy_cooled_flag CHECK (osteotomy_cooled IN (0, 1)),
  release_iliotibial_band INTEGER CONSTRAINT segment_release_iliotibial_band_flag CHECK (release_iliotibial_band IN (0, 1)),
  release_rectus INTEGER CONSTRAINT segment_release_rectus_flag CHECK (release_rectus IN (0, 1)),
  release_adductors INTEGER CONSTRAINT segment_release_adductors_flag CHECK (release_adductors IN (0, 1)),
  release_hamstrings INTEGER CONSTRAINT segment_release_hamstrings_flag CHECK (release_hamstrings IN (0, 1)),
  release_gastrocnemius INTEGER CONSTRAINT segment_release_gastrocnemius_flag CHECK (release_gastrocnemius IN (0, 1)),
  release_peroneal_nerve INTEGER CONSTRAINT segment_release_peroneal_nerve_flag CHECK (release_peroneal_nerve IN (0, 1)),
  release_fascia INTEGER CONSTRAINT segment_release_fascia_flag CHECK (release_fascia IN (0, 1)),
  blocking_screws INTEGER CONSTRAINT segment_blocking_screws_limits CHECK (blocking_screws BETWEEN 0 AND 9),
  distraction_tested_on_table INTEGER CONSTRAINT segment_distraction_tested_on_table_flag CHECK (distraction_tested_on_table IN (0, 1)),
  reference_pins_for_rotation INTEGER CONSTRAINT segment_reference_pins_for_rotation_flag CHECK (reference_pins_for_rotation IN (0, 1)),
  bone_graft_at_operation INTEGER CONSTRAINT segment_bone_graft_at_operation_flag CHECK (bone_graft_at_operation IN (0, 1)),
  rotation_error_deg REAL CONSTRAINT segment_rotation_error_deg_limits CHECK (rotation_error_deg BETWEEN -180 AND 180),
  acute_correction_deg REAL CONSTRAINT segment_acute_correction_deg_limits CHECK (acute_correction_deg BETWEEN -180 AND 180),
  nail_material TEXT CONSTRAINT segment_nail_material_codes CHECK (nail_material IN ('titanium-alloy', 'stainless-steel', 'other')),
  nail_use TEXT CONSTRAINT segment_nail_use_codes CHECK (nail_use IN ('in-canal', 'outside-canal')),
  gap_at_operation_mm REAL CONSTRAINT segment_gap_at_operation_mm_limits CHECK (gap_at_operation_mm BETWEEN 0 AND 100),
  fibula TEXT CONSTRAINT segment_fibula_codes CHECK (fibula IN ('not-cut', 'cut', 'cut-and-fixed-both-ends', 'cut-and-fixed-one-end', 'not-applicable')),
  joint_guarded TEXT CONSTRAINT segment_joint_guarded_codes CHECK (joint_guarded IN ('none', 'splint', 'foot-in-frame', 'temporary-screw', 'spanning-frame')),
  release_when TEXT CONSTRAINT segment_release_when_codes CHECK (release_when IN ('before', 'at-operation', 'during-distraction')),
  planned_gain_mm REAL CONSTRAINT segment_planned_gain_mm_limits CHECK (planned_gain_mm BETWEEN 0 AND 250),
  planned_gain_final_mm REAL CONSTRAINT segment_planned_gain_final_mm_limits CHECK (planned_gain_final_mm BETWEEN 0 AND 250),
  plan_change_reason TEXT CONSTRAINT segment_plan_change_reason_codes CHECK (plan_change_reason IN ('goal-reached-early', 'stiffness', 'nerve', 'pain', 'poor-regenerate', 'patient-wish', 'device', 'other')),
  prescribed_rate_mm_per_day REAL CONSTRAINT segment_prescribed_rate_mm_per_day_limits CHECK (prescribed_rate_mm_per_day BETWEEN 0.05 AND 4),
  prescribed_steps_per_day INTEGER CONSTRAINT segment_prescribed_steps_per_day_limits CHECK (prescribed_steps_per_day BETWEEN 1 AND 1440),
  planned_days_to_consolidation INTEGER CONSTRAINT segment_planned_days_to_consolidation_limits CHECK (planned_days_to_consolidation BETWEEN 1 AND 3000),
  days_paused INTEGER CONSTRAINT segment_days_paused_limits CHECK (days_paused BETWEEN 0 AND 730),
  reversed_mm REAL CONSTRAINT segment_reversed_mm_limits CHECK (reversed_mm BETWEEN 0 AND 250),
  stimulation TEXT CONSTRAINT segment_stimulation_codes CHECK (stimulation IN ('none', 'graft', 'marrow-or-cell-injection', 'drug', 'ultrasound', 'dynamisation', 'several')),
  film_calibrated INTEGER CONSTRAINT segment_film_calibrated_flag CHECK (film_calibrated IN (0, 1)),
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
  consolidation_criterion TEXT CONSTRAINT segment_consolidation_criterion_codes CHECK (consolidation_criterion IN ('three-of-four', 'four-of-four', 'two-of-four', 'pixel-value-ratio', 'ct', 'surgeon-judgement', 'frame-removal-proxy', 'not-stated')),
  end_state TEXT CONSTRAINT segment_end_state_codes CHECK (end_state IN ('healing', 'consolidated', 'abandoned', 'healed-after-bone-surgery', 'nonunion', 'amputated')),
  implant_out_reason TEXT CONSTRAINT segment_implant_out_reason_codes CHECK (implant_out_reason IN ('planned', 'infection', 'breakage', 'exchange', 'intolerance', 'other', 'left-in-by-choice')),
  result_bone TEXT CONSTRAINT segment_result_bone_codes CHECK (result_bone IN ('excellent', 'good', 'fair', 'poor')),
  result_function TEXT CONSTRAINT segment_result_function_codes CHECK (result_function IN ('excellent', 'good', 'fair', 'poor')),
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
  distracted_by TEXT CONSTRAINT visit_distracted_by_codes CHECK (distracted_by IN ('film', 'dial')),
  cortices INTEGER CONSTRAINT visit_cortices_limits CHECK (cortices BETWEEN 0 AND 4),
  weight_bearing TEXT CONSTRAINT visit_weight_bearing_codes CHECK (weight_bearing IN ('none', 'toe-touch', 'partial', 'full')),
  knee_flexion_deg REAL CONSTRAINT visit_knee_flexion_deg_limits CHECK (knee_flexion_deg BETWEEN -90 AND 180),
  knee_extension_deg REAL CONSTRAINT visit_knee_extension_deg_limits CHECK (knee_extension_deg BETWEEN -90 AND 180),
  hip_flexion_deg REAL CONSTRAINT visit_hip_flexion_deg_limits CHECK (hip_flexion_deg BETWEEN -90 AND 180),
  hip_extension_deg REAL CONSTRAINT visit_hip_extension_deg_limits CHECK (hip_extension_deg BETWEEN -90 AND 180),
  ankle_dorsiflexion_deg REAL CONSTRAINT visit_ankle_dorsiflexion_deg_limits CHECK (ankle_dorsiflexion_deg BETWEEN -90 AND 180),
  pain_at_rest INTEGER CONSTRAINT visit_pain_at_rest_limits CHECK (pain_at_rest BETWEEN 0 AND 10),
  pain_on_activity INTEGER CONSTRAINT visit_pain_on_activity_limits CHECK (pain_on_activity BETWEEN 0 AND 10),
  analgesia TEXT CONSTRAINT visit_analgesia_codes CHECK (analgesia IN ('none', 'simple', 'anti-inflammatory', 'weak-opioid', 'strong-opioid')),
  nerve TEXT CONSTRAINT visit_nerve_codes CHECK (nerve IN ('none', 'sensory', 'motor', 'pain-of-nerve-type')),
  joint_position TEXT CONSTRAINT visit_joint_position_codes CHECK (joint_position IN ('in-place', 'subluxed', 'dislocated')),
  callus_shape TEXT CONSTRAINT visit_callus_shape_codes CHECK (callus_shape IN ('fusiform', 'cylindrical', 'concave', 'lateral', 'central', 'atypical')),
  callus_type INTEGER CONSTRAINT visit_callus_type_limits CHECK (callus_type BETWEEN 1 AND 10),
  pin_site_grade INTEGER CONSTRAINT visit_pin_site_grade_limits CHECK (pin_site_grade BETWEEN 0 AND 10),
  read_by TEXT CONSTRAINT visit_read_by_codes CHECK (read_by IN ('operator', 'other', 'panel')),
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
  event_type TEXT NOT NULL CONSTRAINT event_id_event_type_codes CHECK (event_type IN ('muscle-contracture', 'equinus', 'tendon-injury', 'skin-necrosis-or-invagination', 'compartment-syndrome', 'haematoma', 'wound-dehiscence', 'scar', 'heterotopic-ossification', 'stiffness', 'joint-contracture', 'subluxation', 'dislocation', 'cartilage-damage', 'patellar-instability', 'ligament-laxity', 'arterial-injury', 'deep-vein-thrombosis', 'pulmonary-embolism', 'fat-embolism', 'bleeding-transfused', 'premature-consolidation', 'fibular-premature-consolidation', 'incomplete-osteotomy', 'delayed-union', 'nonunion', 'insufficient-regenerate', 'axial-deviation', 'malrotation', 'translation', 'regenerate-fracture', 'other-fracture', 'length-loss', 'over-lengthening', 'fibular-migration', 'bone-necrosis', 'osteolysis', 'fracture-in-theatre', 'sensory-deficit', 'motor-deficit', 'peroneal-palsy', 'complex-regional-pain', 'paraparesis', 'pin-site-infection', 'superficial-infection', 'deep-infection', 'osteomyelitis', 'implant-infection', 'sepsis', 'mechanism-failure', 'runaway', 'failure-to-distract', 'backtracking', 'nail-bent', 'nail-broken', 'locking-screw-failure', 'pin-or-wire-broken', 'pin-loose', 'frame-unstable', 'corrosion', 'controller-failure', 'implant-migration', 'pain-changing-plan', 'sleep-disturbance', 'psychological', 'anaesthetic', 'medical', 'weight-loss', 'stopped-by-patient', 'death-any-cause', 'other-event')),
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
  phase TEXT CONSTRAINT event_phase_codes CHECK (phase IN ('in-theatre', 'latency', 'distraction', 'consolidation', 'after')),
  handling TEXT CONSTRAINT event_handling_codes CHECK (handling IN ('nothing', 'advice-or-physiotherapy', 'programme-changed', 'oral-drug', 'intravenous-drug', 'procedure-without-anaesthesia', 'operation-under-anaesthesia', 'implant-exchanged', 'intensive-care')),
  planned INTEGER CONSTRAINT event_planned_flag CHECK (planned IN (0, 1)),
  plan_changed INTEGER CONSTRAINT event_plan_changed_flag CHECK (plan_changed IN (0, 1)),
  resolved INTEGER CONSTRAINT event_resolved_flag CHECK (resolved IN (0, 1)),
  goal_missed INTEGER CONSTRAINT event_goal_missed_flag CHECK (goal_missed IN (0, 1)),
  life_or_limb_threat INTEGER CONSTRAINT event_life_or_limb_threat_flag CHECK (life_or_limb_threat IN (0, 1)),
  death INTEGER CONSTRAINT event_death_flag CHECK (death IN (0, 1)),
  resolved_day INTEGER CONSTRAINT event_resolved_day_days CHECK (resolved_day BETWEEN -100000 AND 22000000),
  sequela TEXT CONSTRAINT event_sequela_codes CHECK (sequela IN ('none', 'temporary', 'permanent')),
  purpose TEXT CONSTRAINT event_purpose_codes CHECK (purpose IN ('regenerate-healing', 'joint', 'device', 'infection', 'nerve', 'other')),
  consequence_of TEXT CONSTRAINT event_consequence_of_codes CHECK (consequence_of IN ('muscle-contracture', 'equinus', 'tendon-injury', 'skin-necrosis-or-invagination', 'compartment-syndrome', 'haematoma', 'wound-dehiscence', 'scar', 'heterotopic-ossification', 'stiffness', 'joint-contracture', 'subluxation', 'dislocation', 'cartilage-damage', 'patellar-instability', 'ligament-laxity', 'arterial-injury', 'deep-vein-thrombosis', 'pulmonary-embolism', 'fat-embolism', 'bleeding-transfused', 'premature-consolidation', 'fibular-premature-consolidation', 'incomplete-osteotomy', 'delayed-union', 'nonunion', 'insufficient-regenerate', 'axial-deviation', 'malrotation', 'translation', 'regenerate-fracture', 'other-fracture', 'length-loss', 'over-lengthening', 'fibular-migration', 'bone-necrosis', 'osteolysis', 'fracture-in-theatre', 'sensory-deficit', 'motor-deficit', 'peroneal-palsy', 'complex-regional-pain', 'paraparesis', 'pin-site-infection', 'superficial-infection', 'deep-infection', 'osteomyelitis', 'implant-infection', 'sepsis', 'mechanism-failure', 'runaway', 'failure-to-distract', 'backtracking', 'nail-bent', 'nail-broken', 'locking-screw-failure', 'pin-or-wire-broken', 'pin-loose', 'frame-unstable', 'corrosion', 'controller-failure', 'implant-migration', 'pain-changing-plan', 'sleep-disturbance', 'psychological', 'anaesthetic', 'medical', 'weight-loss', 'stopped-by-patient', 'death-any-cause', 'other-event')),
  found_by TEXT CONSTRAINT event_found_by_codes CHECK (found_by IN ('form', 'notes', 'theatre-log')),
  classed_by TEXT CONSTRAINT event_classed_by_codes CHECK (classed_by IN ('operator', 'other-surgeon', 'panel')),
  reported_officially TEXT CONSTRAINT event_reported_officially_codes CHECK (reported_officially IN ('yes', 'no', 'not-needed')),
  class_problem_obstacle TEXT CONSTRAINT event_class_problem_obstacle_codes CHECK (class_problem_obstacle IN ('problem', 'obstacle', 'complication-minor', 'complication-major')),
  class_triple_contract TEXT CONSTRAINT event_class_triple_contract_codes CHECK (class_triple_contract IN ('i', 'ii', 'iii', 'iv')),
  class_three_level TEXT CONSTRAINT event_class_three_level_codes CHECK (class_three_level IN ('minor', 'serious', 'severe')),
  class_severity TEXT CONSTRAINT event_class_severity_codes CHECK (class_severity IN ('i', 'ii', 'iiia', 'iiib')),
  class_surgical TEXT CONSTRAINT event_class_surgical_codes CHECK (class_surgical IN ('i', 'ii', 'iii', 'iva', 'ivb', 'v')),
  class_device TEXT CONSTRAINT event_class_device_codes CHECK (class_device IN ('ia', 'ib', 'ic', 'iia', 'iib', 'iic', 'iiia', 'iiib', 'iiic')),
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
