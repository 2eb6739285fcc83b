// SPDX-License-Identifier: Apache-2.0
#include "engine/store/schema.h"

#include <array>

namespace hingepin::store {
namespace {

// Times are whole milliseconds up to 2^53 - 1, as in records. Large columns stand last, so that the others
// are read without them.
constexpr const char* kVersion1 = R"sql(
CREATE TABLE blob (
  number INTEGER PRIMARY KEY,
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64 AND hash NOT GLOB '*[^0-9a-f]*'),
  media_type TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE unit (
  id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
  profile TEXT NOT NULL
) STRICT;

CREATE TABLE attachment (
  id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
  profile TEXT NOT NULL
) STRICT;

CREATE TABLE pair (
  unit TEXT NOT NULL REFERENCES unit (id),
  attachment TEXT NOT NULL REFERENCES attachment (id),
  calibration TEXT REFERENCES blob (hash),
  record TEXT CHECK (length(record) = 64 AND record NOT GLOB '*[^0-9a-f]*'),
  due_utc_ms INTEGER CHECK (due_utc_ms BETWEEN 0 AND 9007199254740991),
  restrictions TEXT NOT NULL,
  PRIMARY KEY (unit, attachment)
) STRICT, WITHOUT ROWID;
CREATE INDEX pair_due ON pair (due_utc_ms) WHERE due_utc_ms IS NOT NULL;

CREATE TABLE statement (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  kind TEXT NOT NULL CHECK (kind IN ('record', 'signature')),
  key TEXT NOT NULL CHECK (key <> ''),
  epoch TEXT NOT NULL CHECK (epoch <> ''),
  sequence INTEGER NOT NULL CHECK (sequence BETWEEN 1 AND 9007199254740991),
  sealed_utc_ms INTEGER NOT NULL CHECK (sealed_utc_ms BETWEEN 0 AND 9007199254740991),
  job INTEGER REFERENCES job (number),
  unit TEXT CHECK (unit <> ''),
  text TEXT NOT NULL
) STRICT;
CREATE INDEX statement_chain ON statement (key, epoch, sequence);
CREATE INDEX statement_sealed ON statement (sealed_utc_ms);
CREATE INDEX statement_unit ON statement (unit, sealed_utc_ms) WHERE unit IS NOT NULL;

CREATE TABLE job (
  number INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id <> ''),
  unit TEXT NOT NULL REFERENCES unit (id),
  attachment TEXT REFERENCES attachment (id),
  procedure_id TEXT NOT NULL CHECK (procedure_id <> ''),
  procedure TEXT NOT NULL REFERENCES blob (hash),
  words TEXT NOT NULL REFERENCES blob (hash),
  language TEXT NOT NULL CHECK (language <> ''),
  begun_utc_ms INTEGER NOT NULL CHECK (begun_utc_ms BETWEEN 0 AND 9007199254740991),
  phase TEXT NOT NULL CHECK (phase IN ('running', 'done', 'failed', 'abandoned')),
  record TEXT REFERENCES statement (name),
  CHECK ((phase = 'running') = (record IS NULL))
) STRICT;
CREATE INDEX job_unit ON job (unit);
CREATE INDEX job_running ON job (number) WHERE phase = 'running';

CREATE TABLE journal (
  job INTEGER NOT NULL REFERENCES job (number),
  sequence INTEGER NOT NULL CHECK (sequence >= 0),
  event TEXT NOT NULL,
  PRIMARY KEY (job, sequence)
) STRICT, WITHOUT ROWID;

CREATE TABLE signers_list (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  text TEXT NOT NULL
) STRICT;

CREATE TABLE accepted_root (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*')
) STRICT;

CREATE TABLE known_head (
  key TEXT NOT NULL CHECK (key <> ''),
  epoch TEXT NOT NULL CHECK (epoch <> ''),
  sequence INTEGER NOT NULL CHECK (sequence BETWEEN 1 AND 9007199254740991),
  name TEXT NOT NULL CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  PRIMARY KEY (key, epoch, sequence, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE personal (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  salt BLOB CHECK (length(salt) = 32),
  bytes BLOB,
  CHECK ((salt IS NULL) = (bytes IS NULL))
) STRICT;

CREATE TABLE waiting (
  number INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('statement', 'signers', 'blob', 'personal')),
  name TEXT NOT NULL CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  since_utc_ms INTEGER NOT NULL CHECK (since_utc_ms BETWEEN 0 AND 9007199254740991),
  UNIQUE (kind, name)
) STRICT;
)sql";

// A parcel's items are lines; what is here under a name stands as its kind and name.
constexpr const char* kVersion2 = R"sql(
CREATE TABLE parcel (
  number INTEGER PRIMARY KEY,
  source TEXT NOT NULL CHECK (source <> ''),
  sequence INTEGER NOT NULL CHECK (sequence BETWEEN 1 AND 9007199254740991),
  name TEXT NOT NULL CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  manifest TEXT NOT NULL,
  items TEXT NOT NULL,
  UNIQUE (source, sequence, name)
) STRICT;

CREATE TABLE parcel_source (
  source TEXT NOT NULL PRIMARY KEY CHECK (source <> ''),
  whole INTEGER NOT NULL CHECK (whole BETWEEN 0 AND 9007199254740991)
) STRICT, WITHOUT ROWID;

CREATE TABLE seen_parcel (
  source TEXT NOT NULL CHECK (source <> ''),
  witness TEXT NOT NULL CHECK (witness <> ''),
  sequence INTEGER NOT NULL CHECK (sequence BETWEEN 1 AND 9007199254740991),
  name TEXT NOT NULL CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  PRIMARY KEY (source, witness)
) STRICT, WITHOUT ROWID;

CREATE TABLE quarantine (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  source TEXT NOT NULL CHECK (source <> ''),
  reason TEXT NOT NULL CHECK (reason <> ''),
  since_utc_ms INTEGER NOT NULL CHECK (since_utc_ms BETWEEN 0 AND 9007199254740991),
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE awaited (
  kind TEXT NOT NULL CHECK (kind IN ('blob', 'personal')),
  name TEXT NOT NULL CHECK (length(name) = 64 AND name NOT GLOB '*[^0-9a-f]*'),
  named INTEGER NOT NULL CHECK (named IN (0, 1)),
  offer TEXT CHECK (offer <> ''),
  PRIMARY KEY (kind, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  bytes BLOB NOT NULL
) STRICT;

ALTER TABLE waiting ADD COLUMN parcel INTEGER REFERENCES parcel (number);
CREATE INDEX waiting_parcel ON waiting (parcel);
)sql";

// A row of scale_due can be worked out again from the rest at any time.
constexpr const char* kVersion3 = R"sql(
CREATE TABLE yard (
  number INTEGER PRIMARY KEY CHECK (number = 1),
  profile TEXT NOT NULL
) STRICT;

CREATE TABLE scale_due (
  unit TEXT NOT NULL,
  attachment TEXT NOT NULL,
  rule INTEGER NOT NULL,
  due_utc_ms INTEGER,
  told TEXT NOT NULL,
  PRIMARY KEY (unit, attachment),
  FOREIGN KEY (unit, attachment) REFERENCES pair (unit, attachment)
) STRICT, WITHOUT ROWID;
)sql";

constexpr std::array<const char*, 3> kMigrations{kVersion1, kVersion2, kVersion3};

}  // namespace

std::span<const char* const> migrations() { return kMigrations; }

}  // namespace hingepin::store
