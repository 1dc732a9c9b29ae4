-- One file holds every loaded table. Rows of a release are visible only while
-- release.current is 1; all others wait to be swept.

PRAGMA application_id = 1936289907; -- "sips": tells our files from those of other programs

CREATE TABLE release (
    key       INTEGER PRIMARY KEY,
    table_id  TEXT NOT NULL,
    format    TEXT NOT NULL,
    title     TEXT NOT NULL,
    edition   TEXT NOT NULL,
    publisher TEXT NOT NULL,
    licence   TEXT NOT NULL,
    citation  TEXT NOT NULL,
    hash      TEXT NOT NULL,    -- of the files read, hexadecimal
    foods     INTEGER NOT NULL, -- rows loaded
    amounts   INTEGER NOT NULL, -- rows of value loaded
    loaded_at TEXT NOT NULL,    -- RFC 3339, UTC
    current   INTEGER NOT NULL CHECK (current IN (0, 1))
) STRICT;

-- A table has at most one current release.
CREATE UNIQUE INDEX release_current ON release (table_id) WHERE current = 1;

CREATE TABLE table_column (
    release     INTEGER NOT NULL REFERENCES release (key),
    place       INTEGER NOT NULL, -- order in the table
    id          TEXT NOT NULL,
    number      TEXT NOT NULL,
    name        TEXT NOT NULL,
    unit        TEXT NOT NULL,
    decimals    INTEGER NOT NULL, -- -1: not stated
    constituent INTEGER NOT NULL CHECK (constituent IN (0, 1)),
    PRIMARY KEY (release, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE source (
    release  INTEGER NOT NULL REFERENCES release (key),
    id       TEXT NOT NULL,
    place    INTEGER NOT NULL,
    citation TEXT NOT NULL,
    url      TEXT NOT NULL,
    licence  TEXT NOT NULL,
    grade    TEXT NOT NULL,
    note     TEXT NOT NULL,
    PRIMARY KEY (release, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE food (
    key             INTEGER PRIMARY KEY, -- rises in order of appearance; one load takes one run of keys
    release         INTEGER NOT NULL REFERENCES release (key),
    code            TEXT NOT NULL,       -- as the publisher writes it
    our_group       TEXT NOT NULL,
    publisher_group TEXT NOT NULL,
    density         REAL,                -- g/ml
    density_sd      REAL,
    density_source  TEXT NOT NULL,
    edible          REAL,                -- share, 0..1
    chemical        INTEGER NOT NULL CHECK (chemical IN (0, 1)),
    note            TEXT NOT NULL,
    UNIQUE (release, code)
) STRICT;

CREATE TABLE food_name (
    key      INTEGER PRIMARY KEY, -- the rowid of the name in food_name_index
    food     INTEGER NOT NULL REFERENCES food (key),
    language TEXT NOT NULL,
    text     TEXT NOT NULL
) STRICT;

CREATE INDEX food_name_of ON food_name (food);
CREATE INDEX food_name_text ON food_name (text);

-- The names' words, without case and diacritics. The text itself is kept once, in food_name.
CREATE VIRTUAL TABLE food_name_index USING fts5 (
    text, content = '', contentless_delete = 1, tokenize = 'unicode61 remove_diacritics 2'
);

CREATE VIRTUAL TABLE food_word USING fts5vocab (food_name_index, 'row');

-- Constituents by number, so that a value's key is two small integers.
CREATE TABLE constituent_key (
    key INTEGER PRIMARY KEY,
    id  TEXT NOT NULL UNIQUE
) STRICT;

-- What drinks are made of has fixed numbers, so that the index below can name
-- them.
INSERT INTO constituent_key (key, id) VALUES
    (1, 'CITAC'),
    (2, 'MALAC'),
    (3, 'QUINAC'),
    (4, 'TARAC'),
    (5, 'LACAC'),
    (6, 'ACEAC'),
    (7, 'ISOCAC'),
    (8, 'OXALAC'),
    (9, 'SUCAC'),
    (10, 'FUMAC'),
    (11, 'GLUCAC'),
    (12, 'FORAC'),
    (13, 'OA'),
    (14, 'SUGAR'),
    (15, 'GLUS'),
    (16, 'FRUS'),
    (17, 'SUCS'),
    (18, 'LACS'),
    (19, 'MALS'),
    (20, 'GALS'),
    (21, 'SUGAD'),
    (22, 'SORTL'),
    (23, 'POLYL'),
    (24, 'CAFFN'),
    (25, 'THEBRN'),
    (26, 'CHLRAC'),
    (27, 'trigonelline'),
    (28, 'phosphate'),
    (29, 'NARIN'),
    (30, 'TAN'),
    (31, 'ALC'),
    (32, 'FAT'),
    (33, 'PROCNT'),
    (34, 'FIBTG'),
    (35, 'STARCH'),
    (36, 'NA'),
    (37, 'K'),
    (38, 'CA'),
    (39, 'MG'),
    (40, 'P'),
    (41, 'VITC'),
    (42, 'CO2');

-- Per 100 g edible part, in the vocabulary's unit. NULL: nobody has stated it.
-- No REFERENCES here: checking them for every row costs a tenth of a load.
CREATE TABLE value (
    food        INTEGER NOT NULL, -- a key of food
    constituent INTEGER NOT NULL, -- a key of constituent_key
    amount      REAL,
    sd          REAL,
    n           INTEGER NOT NULL, -- 0: not stated
    low         REAL,
    high        REAL,
    most        REAL,             -- the limit of trace, below and unknown
    state       INTEGER NOT NULL CHECK (state BETWEEN 0 AND 5), -- measured calculated assumed trace below unknown
    source      TEXT NOT NULL,
    ref         TEXT NOT NULL,
    PRIMARY KEY (food, constituent)
) STRICT, WITHOUT ROWID;

-- Foods by how much they have of a drink constituent.
CREATE INDEX value_rank ON value (constituent, amount DESC) WHERE constituent <= 42 AND amount > 0;

CREATE TABLE portion (
    food  INTEGER NOT NULL REFERENCES food (key),
    place INTEGER NOT NULL,
    name  TEXT NOT NULL,
    grams REAL,
    sd    REAL,
    PRIMARY KEY (food, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE food_mark (
    food   INTEGER NOT NULL REFERENCES food (key),
    place  INTEGER NOT NULL,
    kind   TEXT NOT NULL,
    mark   TEXT NOT NULL, -- a leaf code; empty: stated that there is none of this kind
    share  REAL,
    source TEXT NOT NULL,
    PRIMARY KEY (food, place)
) STRICT, WITHOUT ROWID;
