-- A removal names what it removes, so that it can go along to other computers and take no later answer with it. The
-- children in removed_child were removed by earlier programs, which named nothing: all of such a child stays away.

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
