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
