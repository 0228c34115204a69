-- The schema of a fresh SQLite file; a test compares the two. Change it by a new migration only.

CREATE TABLE child (
  nr INTEGER  NOT NULL,
  id VARCHAR(36) NOT NULL, -- the same on every computer
  name VARCHAR(80) NOT NULL, -- as it was when the child was added; a later name is an act
  created_at BIGINT NOT NULL,
  CONSTRAINT pk_child PRIMARY KEY (nr),
  CONSTRAINT uq_child_id UNIQUE (id),
  CONSTRAINT ck_child_id CHECK (LENGTH(id) = 36),
  CONSTRAINT ck_child_name CHECK (LENGTH(name) BETWEEN 1 AND 80),
  CONSTRAINT ck_child_created CHECK (created_at BETWEEN 0 AND 99999999999999)
);

CREATE TABLE drill (
  nr INTEGER  NOT NULL,
  id VARCHAR(36) NOT NULL, -- the same on every computer
  child_nr INTEGER NOT NULL,
  started_at BIGINT NOT NULL,
  zone_offset_min SMALLINT NOT NULL,
  planned_s INTEGER NOT NULL, -- how long it was meant to last, in seconds
  seed BIGINT NOT NULL, -- the number that decided every free choice
  CONSTRAINT pk_drill PRIMARY KEY (nr),
  CONSTRAINT uq_drill_id UNIQUE (id),
  CONSTRAINT fk_drill_child FOREIGN KEY (child_nr) REFERENCES child (nr),
  CONSTRAINT ck_drill_id CHECK (LENGTH(id) = 36),
  CONSTRAINT ck_drill_started CHECK (started_at BETWEEN 0 AND 99999999999999),
  CONSTRAINT ck_drill_zone CHECK (zone_offset_min BETWEEN -1080 AND 1080),
  CONSTRAINT ck_drill_planned CHECK (planned_s BETWEEN 60 AND 1800),
  CONSTRAINT ck_drill_seed CHECK (seed <= 9223372036854775807)
);

CREATE UNIQUE INDEX ix_drill_child ON drill (child_nr, started_at, id);

CREATE TABLE gate (
  nr INTEGER NOT NULL,
  hash VARCHAR(400) NOT NULL, -- how it was made, salt and hash, as text
  set_at BIGINT NOT NULL,
  wrong_tries INTEGER NOT NULL, -- since the last right one
  wrong_at BIGINT, -- the last wrong one
  CONSTRAINT pk_gate PRIMARY KEY (nr),
  CONSTRAINT ck_gate_nr CHECK (nr = 1),
  CONSTRAINT ck_gate_hash CHECK (LENGTH(hash) BETWEEN 1 AND 400),
  CONSTRAINT ck_gate_set CHECK (set_at BETWEEN 0 AND 99999999999999),
  CONSTRAINT ck_gate_tries CHECK (wrong_tries BETWEEN 0 AND 1000000),
  CONSTRAINT ck_gate_wrong CHECK (wrong_at BETWEEN 0 AND 99999999999999)
);

CREATE TABLE removed_child (
  id VARCHAR(36) NOT NULL,
  removed_at BIGINT NOT NULL,
  CONSTRAINT pk_removed_child PRIMARY KEY (id),
  CONSTRAINT ck_removed_child_id CHECK (LENGTH(id) = 36),
  CONSTRAINT ck_removed_child_at CHECK (removed_at BETWEEN 0 AND 99999999999999)
);

CREATE TABLE home_setting (
  name VARCHAR(40) NOT NULL,
  text VARCHAR(400) NOT NULL,
  CONSTRAINT pk_home_setting PRIMARY KEY (name),
  CONSTRAINT ck_home_setting_name CHECK (LENGTH(name) BETWEEN 1 AND 40)
);

CREATE TABLE removed_record (
  id VARCHAR(36) NOT NULL, -- of the child, the drill or the act
  child_id VARCHAR(36) NOT NULL,
  kind SMALLINT NOT NULL, -- 1 child, 2 drill, 3 act
  answers INTEGER NOT NULL, -- of a drill: the last position that was removed, 0 if it had no answer
  removed_at BIGINT NOT NULL,
  CONSTRAINT pk_removed_record PRIMARY KEY (id),
  CONSTRAINT ck_removed_record_id CHECK (LENGTH(id) = 36),
  CONSTRAINT ck_removed_record_child CHECK (LENGTH(child_id) = 36),
  CONSTRAINT ck_removed_record_kind CHECK (kind BETWEEN 1 AND 3),
  CONSTRAINT ck_removed_record_answers CHECK (answers BETWEEN 0 AND 10000),
  CONSTRAINT ck_removed_record_at CHECK (removed_at BETWEEN 0 AND 99999999999999)
);

CREATE TABLE answer (
  drill_nr INTEGER NOT NULL,
  position INTEGER NOT NULL, -- place in the drill, from 1
  asked_at BIGINT NOT NULL,
  zone_offset_min SMALLINT NOT NULL,
  purpose SMALLINT NOT NULL, -- 0 copy, 1 introduce, 2 practise, 3 again, 4 probe, 5 paper, 6 timed, 7 aloud
  operation SMALLINT, -- 1 multiply, 2 divide, 3 divide asked as right x ? = left; NULL for a copy
  left_number SMALLINT NOT NULL, -- the number before the sign, or the number to copy
  right_number SMALLINT, -- the number after the sign; NULL for a number to copy
  typed VARCHAR(4), -- the digits as they stood; NULL for no answer
  first_key_ms INTEGER, -- from paint to first digit; NULL if none, if the drill was paused, on paper and aloud
  whole_ms INTEGER, -- from paint to Enter or to the calm limit; on paper its share of the page's; NULL if not timed
  erasures INTEGER NOT NULL, -- digits taken back
  surface SMALLINT NOT NULL, -- 1 terminal, 2 window, 3 plain lines, 4 paper, 5 aloud
  pace SMALLINT, -- of an answer said aloud: 1 quick, 2 slow
  checksum INTEGER, -- CRC-32C of the row and its drill's id; NULL in rows that earlier programs kept
  CONSTRAINT pk_answer PRIMARY KEY (drill_nr, position),
  CONSTRAINT fk_answer_drill FOREIGN KEY (drill_nr) REFERENCES drill (nr),
  CONSTRAINT ck_answer_position CHECK (position BETWEEN 1 AND 10000),
  CONSTRAINT ck_answer_asked CHECK (asked_at BETWEEN 0 AND 99999999999999),
  CONSTRAINT ck_answer_zone CHECK (zone_offset_min BETWEEN -1080 AND 1080),
  CONSTRAINT ck_answer_purpose CHECK (purpose BETWEEN 0 AND 7),
  CONSTRAINT ck_answer_prompt CHECK (
    (purpose = 0 AND operation IS NULL AND right_number IS NULL AND left_number BETWEEN 1 AND 100)
    OR (purpose <> 0 AND operation IS NOT NULL AND right_number IS NOT NULL AND right_number BETWEEN 1 AND 10
      AND ((operation = 1 AND left_number BETWEEN 1 AND 10)
        OR (operation IN (2, 3) AND left_number % right_number = 0
          AND left_number BETWEEN right_number AND right_number * 10)))),
  CONSTRAINT ck_answer_typed CHECK (LENGTH(typed) BETWEEN 1 AND 4 AND LTRIM(typed, '0123456789') = ''),
  CONSTRAINT ck_answer_first_key CHECK (first_key_ms BETWEEN 0 AND 1000000000),
  CONSTRAINT ck_answer_whole CHECK (whole_ms BETWEEN 0 AND 1000000000),
  CONSTRAINT ck_answer_keyless CHECK (purpose NOT IN (5, 7) OR first_key_ms IS NULL),
  CONSTRAINT ck_answer_erasures CHECK (erasures BETWEEN 0 AND 100000),
  CONSTRAINT ck_answer_surface CHECK (surface BETWEEN 1 AND 5),
  CONSTRAINT ck_answer_pace CHECK (pace IS NULL OR (purpose = 7 AND pace IN (1, 2)))
);

CREATE TABLE act (
  nr INTEGER  NOT NULL,
  id VARCHAR(36) NOT NULL, -- the same on every computer
  child_nr INTEGER NOT NULL,
  made_at BIGINT NOT NULL,
  zone_offset_min SMALLINT NOT NULL,
  kind VARCHAR(10) NOT NULL,
  detail VARCHAR(400) NOT NULL, -- a family 6x7, a table 7, an order 2 1 5 ..., setting=text, or the id of an act
  CONSTRAINT pk_act PRIMARY KEY (nr),
  CONSTRAINT uq_act_id UNIQUE (id),
  CONSTRAINT fk_act_child FOREIGN KEY (child_nr) REFERENCES child (nr),
  CONSTRAINT ck_act_id CHECK (LENGTH(id) = 36),
  CONSTRAINT ck_act_made CHECK (made_at BETWEEN 0 AND 99999999999999),
  CONSTRAINT ck_act_zone CHECK (zone_offset_min BETWEEN -1080 AND 1080),
  CONSTRAINT ck_act_kind CHECK (
    kind IN ('focus', 'hold', 'release', 'reset', 'open', 'close', 'order', 'choose', 'undo', 'calendar', 'taught',
      'away')),
  CONSTRAINT ck_act_detail CHECK (LENGTH(detail) BETWEEN 1 AND 400)
);

CREATE INDEX ix_act_child ON act (child_nr, made_at);

CREATE VIEW answer_log AS
SELECT
  nickname, drill, position,
  CASE WHEN mp < 10 THEN years ELSE years + 1 END
    || CASE WHEN mp < 7 THEN '-0' ELSE CASE WHEN mp < 10 THEN '-' ELSE '-0' END END
    || CASE WHEN mp < 10 THEN mp + 3 ELSE mp - 9 END
    || CASE WHEN day_of_year - (153 * mp + 2) / 5 < 9 THEN '-0' ELSE '-' END
    || (day_of_year - (153 * mp + 2) / 5 + 1)
    || CASE WHEN seconds / 3600 < 10 THEN ' 0' ELSE ' ' END || (seconds / 3600)
    || CASE WHEN seconds / 60 % 60 < 10 THEN ':0' ELSE ':' END || (seconds / 60 % 60)
    || CASE WHEN seconds % 60 < 10 THEN ':0' ELSE ':' END || (seconds % 60) AS local_time,
  CASE purpose WHEN 0 THEN 'copy' WHEN 1 THEN 'introduce' WHEN 2 THEN 'practise' WHEN 3 THEN 'again' WHEN 4 THEN 'probe'
    WHEN 5 THEN 'paper' WHEN 6 THEN 'timed' ELSE 'aloud' END AS purpose,
  CASE operation WHEN 1 THEN left_number || ' x ' || right_number
    WHEN 2 THEN left_number || ' / ' || right_number
    WHEN 3 THEN right_number || ' x ? = ' || left_number
    ELSE 'copy ' || left_number END AS asked,
  expected, typed,
  CASE WHEN typed IS NULL THEN 'none' WHEN CAST(typed AS INTEGER) = expected THEN 'right' ELSE 'wrong' END AS outcome,
  first_key_ms, whole_ms, erasures,
  CASE surface WHEN 1 THEN 'terminal' WHEN 2 THEN 'window' WHEN 3 THEN 'plain' WHEN 4 THEN 'paper' ELSE 'aloud' END
    AS surface,
  CASE pace WHEN 1 THEN 'quick' WHEN 2 THEN 'slow' END AS pace
FROM (
  SELECT l4.*, (5 * day_of_year + 2) / 153 AS mp
  FROM (
    SELECT l3.*, era * 400 + year_of_era AS years,
      day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100) AS day_of_year
    FROM (
      SELECT l2.*,
        (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365 AS year_of_era
      FROM (
        SELECT l1.*, days / 146097 AS era, days % 146097 AS day_of_era
        FROM (
          SELECT a.*, d.id AS drill,
            CASE a.operation WHEN 1 THEN a.left_number * a.right_number
              WHEN 2 THEN a.left_number / a.right_number WHEN 3 THEN a.left_number / a.right_number
              ELSE a.left_number END AS expected,
            (a.asked_at + a.zone_offset_min * 60000) / 86400000 + 719468 AS days,
            (a.asked_at + a.zone_offset_min * 60000) / 1000 % 86400 AS seconds,
            COALESCE(
              (SELECT SUBSTR(n.detail, 6) FROM act n
               WHERE n.child_nr = d.child_nr AND n.kind = 'choose' AND SUBSTR(n.detail, 1, 5) = 'name='
                 AND NOT EXISTS (SELECT 1 FROM act u WHERE u.kind = 'undo' AND u.detail = n.id
                   AND NOT EXISTS (SELECT 1 FROM act v WHERE v.kind = 'undo' AND v.detail = u.id))
               ORDER BY n.made_at DESC, n.id DESC LIMIT 1),
              c.name) AS nickname
          FROM answer a JOIN drill d ON d.nr = a.drill_nr JOIN child c ON c.nr = d.child_nr
        ) l1
      ) l2
    ) l3
  ) l4
) l5;
