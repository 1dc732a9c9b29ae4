-- The words of a table's names, for who slips at one: reading them out of the index of the names takes
-- seconds where there are millions.
CREATE TABLE vocabulary (
    release INTEGER NOT NULL REFERENCES release (key),
    letters INTEGER NOT NULL, -- of each of these words
    words   TEXT NOT NULL,    -- as the index has them, by the alphabet, each after a line feed, a space, and how many names have it
    PRIMARY KEY (release, letters)
) STRICT;

CREATE VIRTUAL TABLE temp.word_of_name USING fts5vocab (main, food_name_index, 'instance');

-- A number is nobody's slip for another: words without a letter are left out.
INSERT INTO vocabulary (release, letters, words)
    SELECT release, length(term), group_concat(char(10) || term || ' ' || names, '' ORDER BY term) || char(10) FROM (
        SELECT f.release, w.term, count(DISTINCT w.doc) AS names
        FROM temp.word_of_name w CROSS JOIN food_name n ON n.key = w.doc CROSS JOIN food f ON f.key = n.food
        WHERE w.term GLOB '*[^0-9]*' GROUP BY f.release, w.term)
    GROUP BY release, length(term);

DROP TABLE temp.word_of_name;
DROP TABLE food_word;

-- Foods of one group of a release, and how many of them state something of a constituent that is ranked.
CREATE TABLE stratum (
    key         INTEGER PRIMARY KEY,
    release     INTEGER NOT NULL REFERENCES release (key),
    our_group   TEXT NOT NULL,
    constituent INTEGER NOT NULL, -- a key of constituent_key; 0: the foods of the group, whatever they state
    some        INTEGER NOT NULL, -- more than nothing of it
    none        INTEGER NOT NULL, -- nothing, or less than could be told
    UNIQUE (constituent, release, our_group)
) STRICT;

-- What kin share out is ranked too.
INSERT INTO constituent_key (key, id) VALUES (43, 'titratable');

INSERT INTO stratum (release, our_group, constituent, some, none)
    SELECT release, our_group, 0, count(*), 0 FROM food GROUP BY release, our_group;

INSERT INTO stratum (release, our_group, constituent, some, none)
    SELECT f.release, f.our_group, k.key, sum(coalesce(v.value ->> 0, 0) > 0), sum(coalesce(v.value ->> 0 = 0, v.value ->> 1 <> 5)) -- 5: unknown
    FROM food f CROSS JOIN json_each(f.facts) v CROSS JOIN constituent_key k ON k.id = v.key
    GROUP BY f.release, f.our_group, k.key;

-- Foods by how much they have of a constituent, within each stratum: drinks are found among foods of all kinds
-- without a look at these.
CREATE TABLE ranked_by_stratum (
    stratum INTEGER NOT NULL, -- a key of stratum
    amount  REAL NOT NULL,    -- above zero
    food    INTEGER NOT NULL, -- a key of food
    PRIMARY KEY (stratum, amount DESC, food)
) STRICT, WITHOUT ROWID;

INSERT INTO ranked_by_stratum (stratum, amount, food)
    SELECT s.key, v.amount, v.food
    FROM (SELECT constituent, amount, food FROM ranked
            UNION ALL SELECT 43, CAST(facts ->> '$.titratable[0]' AS REAL), key FROM food WHERE facts ->> '$.titratable[0]' > 0) v
        CROSS JOIN food f ON f.key = v.food
        CROSS JOIN stratum s ON s.constituent = v.constituent AND s.release = f.release AND s.our_group = f.our_group
    ORDER BY s.key, v.amount DESC, v.food;

DROP TABLE ranked;
ALTER TABLE ranked_by_stratum RENAME TO ranked;

-- What stands on the label of a food: the number of the article, in fourteen digits, its name and what it is made
-- of. Only which words, and not where.
CREATE VIRTUAL TABLE food_label_index USING fts5 (
    text, content = '', contentless_delete = 1, detail = none, tokenize = 'unicode61 remove_diacritics 2'
);

-- Until now it stood in the notes alone, a line each.
INSERT INTO food_label_index (rowid, text)
    SELECT key, article || ' ' || coalesce((SELECT text FROM food_name WHERE food = label.key ORDER BY food_name.key LIMIT 1), '') || ' ' || declared FROM (
        SELECT key, iif(instr(note, 'GTIN: '), substr(note, instr(note, 'GTIN: ') + 6, 14), '') AS article,
            iif(instr(rest, char(10)), substr(rest, 1, instr(rest, char(10)) - 1), rest) AS declared
        FROM (SELECT key, note, iif(instr(note, 'Ingredients: '), substr(note, instr(note, 'Ingredients: ') + 13), '') AS rest FROM food)) label
    WHERE article <> '' OR declared <> '';

-- Foods by what they are called, whatever the case. An index on the names would be written in the order in which
-- foods come, page by page all over it; this is written at the end of a load, in its own order.
CREATE TABLE called (
    text TEXT NOT NULL COLLATE NOCASE,
    name INTEGER NOT NULL, -- a key of food_name
    PRIMARY KEY (text, name)
) STRICT, WITHOUT ROWID;

INSERT INTO called (text, name) SELECT text, key FROM food_name ORDER BY text COLLATE NOCASE, key;

DROP INDEX food_name_text;
