-- A food is read whole, so all that is stated of it is one text: a table with a row for each value is
-- four times as slow to load, and no faster to read. The view "value" gives the rows to who asks by SQL.

-- Texts that many values share: kinds of source, references. A key is never used again, so that who has
-- read its text may keep it.
CREATE TABLE shared_text (
    key     INTEGER PRIMARY KEY AUTOINCREMENT,
    release INTEGER NOT NULL REFERENCES release (key),
    text    TEXT NOT NULL
) STRICT;

CREATE INDEX shared_text_of ON shared_text (release, text);

INSERT INTO shared_text (release, text)
    SELECT DISTINCT f.release, v.source FROM value v CROSS JOIN food f ON f.key = v.food WHERE v.source <> ''
    UNION SELECT DISTINCT f.release, v.ref FROM value v CROSS JOIN food f ON f.key = v.food WHERE v.ref <> '';

-- "facts" has for each constituent, by its id, [amount, state, source, ref, n, sd, low, high, most, line]: null
-- is what nobody has stated, and what is not stated at the end is left out. A source or ref is a key
-- of shared_text, or the text itself; line is where the publisher's file has the value.
ALTER TABLE food ADD COLUMN facts TEXT NOT NULL DEFAULT '{}';
ALTER TABLE food ADD COLUMN portions TEXT NOT NULL DEFAULT '[]'; -- [name, grams, sd] each
ALTER TABLE food ADD COLUMN marks TEXT NOT NULL DEFAULT '[]';    -- [kind, mark, share, source] each

-- Seventeen digits give back each bit of a number.
UPDATE food SET facts = (
    SELECT json_group_object(k.id, json('[' ||
        iif(v.amount IS NULL, 'null', printf('%!.17g', v.amount)) || ',' || v.state || ',' ||
        coalesce((SELECT t.key FROM shared_text t WHERE t.release = food.release AND t.text = v.source), 'null') || ',' ||
        coalesce((SELECT t.key FROM shared_text t WHERE t.release = food.release AND t.text = v.ref), 'null') || ',' ||
        v.n || ',' ||
        iif(v.sd IS NULL, 'null', printf('%!.17g', v.sd)) || ',' ||
        iif(v.low IS NULL, 'null', printf('%!.17g', v.low)) || ',' ||
        iif(v.high IS NULL, 'null', printf('%!.17g', v.high)) || ',' ||
        iif(v.most IS NULL, 'null', printf('%!.17g', v.most)) || ']'))
    FROM value v CROSS JOIN constituent_key k ON k.key = v.constituent WHERE v.food = food.key);

UPDATE food SET portions = (
    SELECT json_group_array(json('[' || json_quote(p.name) || ',' ||
        iif(p.grams IS NULL, 'null', printf('%!.17g', p.grams)) || ',' ||
        iif(p.sd IS NULL, 'null', printf('%!.17g', p.sd)) || ']') ORDER BY p.place)
    FROM portion p WHERE p.food = food.key);

UPDATE food SET marks = (
    SELECT json_group_array(json('[' || json_quote(m.kind) || ',' || json_quote(m.mark) || ',' ||
        iif(m.share IS NULL, 'null', printf('%!.17g', m.share)) || ',' || json_quote(m.source) || ']') ORDER BY m.place)
    FROM food_mark m WHERE m.food = food.key);

-- Foods by how much they have of a drink constituent, those with the most first.
CREATE TABLE ranked (
    constituent INTEGER NOT NULL, -- a key of constituent_key
    amount      REAL NOT NULL,    -- above zero
    food        INTEGER NOT NULL, -- a key of food
    PRIMARY KEY (constituent, amount DESC, food)
) STRICT, WITHOUT ROWID;

INSERT INTO ranked (constituent, amount, food)
    SELECT constituent, amount, food FROM value WHERE constituent <= 42 AND amount > 0 ORDER BY constituent, amount DESC, food;

DROP TABLE portion;
DROP TABLE food_mark;
DROP TABLE value;
DELETE FROM constituent_key WHERE key > 42; -- what is ranked; others are known by their id alone

CREATE VIEW value (food, constituent, amount, state, source, ref, n, sd, low, high, most, line) AS
    SELECT f.key, v.key, CAST(v.value ->> 0 AS REAL), v.value ->> 1,
        coalesce(iif(json_type(v.value, '$[2]') = 'integer', (SELECT text FROM shared_text WHERE key = v.value ->> 2), v.value ->> 2), ''),
        coalesce(iif(json_type(v.value, '$[3]') = 'integer', (SELECT text FROM shared_text WHERE key = v.value ->> 3), v.value ->> 3), ''),
        coalesce(v.value ->> 4, 0), CAST(v.value ->> 5 AS REAL), CAST(v.value ->> 6 AS REAL), CAST(v.value ->> 7 AS REAL),
        CAST(v.value ->> 8 AS REAL), v.value ->> 9
    FROM food f CROSS JOIN json_each(f.facts) v;
