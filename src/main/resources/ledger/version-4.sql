-- Schema 4. Rows are only ever added; what changes is what is still active, how far an entry has come, and that what is
-- personal is emptied once it may be forgotten: its seal stays, so that the entry can still be proved.
-- Money in cents, days as 2026-11-23, moments in UTC. seq is the order of work; nothing is ordered by a clock.
CREATE TABLE office (
  id TEXT NOT NULL PRIMARY KEY,
  made_at TEXT NOT NULL,
  schema_version INTEGER NOT NULL
) STRICT;

CREATE TABLE entry (
  seq INTEGER NOT NULL PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('batch', 'advice', 'forgetting', 'withdrawal', 'scan')),
  name TEXT NOT NULL UNIQUE,
  source_name TEXT NOT NULL,
  source_sha256 TEXT NOT NULL,
  day TEXT NOT NULL,
  at TEXT NOT NULL,
  program TEXT NOT NULL,
  detail_sha256 TEXT NOT NULL,
  rows_sha256 TEXT NOT NULL,
  chain_sha256 TEXT NOT NULL
) STRICT;
CREATE INDEX entry_source ON entry (source_sha256);

CREATE TABLE progress (
  entry INTEGER NOT NULL PRIMARY KEY REFERENCES entry (seq),
  place TEXT NOT NULL,
  staged TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('committed', 'published', 'filed'))
) STRICT;

CREATE TABLE job (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  reference TEXT NOT NULL,
  source_row INTEGER NOT NULL,
  outcome TEXT NOT NULL CHECK (outcome IN ('issued', 'held', 'booked')),
  pack TEXT NOT NULL,
  installed_on TEXT NOT NULL,
  warranty_until TEXT NOT NULL,
  PRIMARY KEY (job_key, version)
) STRICT;
CREATE INDEX job_entry ON job (entry);

CREATE TABLE personal (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  site_key TEXT NOT NULL,
  print_key TEXT NOT NULL,
  prints TEXT NOT NULL,
  salt TEXT NOT NULL,
  seal TEXT NOT NULL,
  PRIMARY KEY (job_key, version)
) STRICT;
CREATE INDEX personal_entry ON personal (entry);
CREATE INDEX personal_site ON personal (site_key);

CREATE TABLE forgotten (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  PRIMARY KEY (job_key, version)
) STRICT;
CREATE INDEX forgotten_entry ON forgotten (entry);

CREATE TABLE withdrawn (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  reason TEXT NOT NULL,
  PRIMARY KEY (job_key, version)
) STRICT;
CREATE INDEX withdrawn_entry ON withdrawn (entry);

CREATE TABLE paper (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  kind TEXT NOT NULL,
  says TEXT NOT NULL,
  PRIMARY KEY (job_key, version, kind)
) STRICT;
CREATE INDEX paper_entry ON paper (entry);

CREATE TABLE scanned (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  place INTEGER NOT NULL,
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  kind TEXT NOT NULL,
  page INTEGER NOT NULL,
  pages INTEGER NOT NULL,
  blank INTEGER NOT NULL,
  PRIMARY KEY (entry, place)
) STRICT;
CREATE INDEX scanned_job ON scanned (job_key);

CREATE TABLE sale (
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  installed_on TEXT NOT NULL,
  price_cents INTEGER NOT NULL,
  gst_cents INTEGER NOT NULL,
  PRIMARY KEY (job_key, version)
) STRICT;
CREATE INDEX sale_entry ON sale (entry);

CREATE TABLE claim (
  id INTEGER NOT NULL PRIMARY KEY,
  entry INTEGER NOT NULL REFERENCES entry (seq),
  job_key TEXT NOT NULL,
  version INTEGER NOT NULL,
  reference TEXT NOT NULL,
  scheme TEXT NOT NULL,
  buyer TEXT NOT NULL,
  certificates INTEGER NOT NULL,
  installed_on TEXT NOT NULL,
  lodge_by TEXT NOT NULL,
  expected_cents INTEGER NOT NULL,
  owner_cents INTEGER NOT NULL,
  gst_cents INTEGER NOT NULL,
  due TEXT NOT NULL,
  active INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX claim_once ON claim (job_key, scheme) WHERE active = 1;
CREATE INDEX claim_entry ON claim (entry);
CREATE INDEX claim_job ON claim (job_key);
CREATE INDEX claim_reference ON claim (reference);
CREATE INDEX claim_open ON claim (buyer, expected_cents) WHERE active = 1;

CREATE TABLE serial (
  claim INTEGER NOT NULL REFERENCES claim (id),
  entry INTEGER NOT NULL REFERENCES entry (seq),
  place INTEGER NOT NULL,
  scheme TEXT NOT NULL,
  seen TEXT NOT NULL,
  serial_key TEXT NOT NULL,
  lookalike_key TEXT NOT NULL,
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  PRIMARY KEY (claim, place)
) STRICT;
CREATE UNIQUE INDEX serial_once ON serial (scheme, serial_key) WHERE active = 1;
CREATE INDEX serial_lookalike ON serial (lookalike_key);
CREATE INDEX serial_key ON serial (serial_key);
CREATE INDEX serial_entry ON serial (entry);

CREATE TABLE withdrawal (
  claim INTEGER NOT NULL PRIMARY KEY REFERENCES claim (id),
  entry INTEGER NOT NULL REFERENCES entry (seq),
  reason TEXT NOT NULL
) STRICT;
CREATE INDEX withdrawal_entry ON withdrawal (entry);

CREATE TABLE line (
  id INTEGER NOT NULL PRIMARY KEY,
  entry INTEGER NOT NULL REFERENCES entry (seq),
  line_key TEXT NOT NULL UNIQUE,
  source_row INTEGER NOT NULL,
  day TEXT NOT NULL,
  cents INTEGER NOT NULL,
  reference TEXT NOT NULL
) STRICT;
CREATE INDEX line_same ON line (day, cents, reference);
CREATE INDEX line_entry ON line (entry);

CREATE TABLE matched (
  line INTEGER NOT NULL REFERENCES line (id),
  claim INTEGER NOT NULL REFERENCES claim (id),
  entry INTEGER NOT NULL REFERENCES entry (seq),
  kind TEXT NOT NULL CHECK (kind IN ('lodged', 'paid', 'failed')),
  day TEXT NOT NULL,
  cents INTEGER NOT NULL,
  how TEXT NOT NULL,
  reason TEXT NOT NULL,
  buyer_reference TEXT NOT NULL,
  PRIMARY KEY (line, claim)
) STRICT;
CREATE INDEX matched_claim ON matched (claim);
CREATE INDEX matched_entry ON matched (entry);
CREATE INDEX matched_buyer_reference ON matched (buyer_reference);
