-- The foods of a release are one run of keys, because one transaction wrote them.
-- Who knows its ends finds the release's names, and what to sweep, without reading
-- all of its foods.
ALTER TABLE release ADD COLUMN first_food INTEGER NOT NULL DEFAULT 0;
ALTER TABLE release ADD COLUMN last_food INTEGER NOT NULL DEFAULT -1;

UPDATE release SET
    first_food = coalesce((SELECT min(food.key) FROM food WHERE food.release = release.key), 0),
    last_food = coalesce((SELECT max(food.key) FROM food WHERE food.release = release.key), -1);
