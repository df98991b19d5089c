-- Dishes, every version of each, foods of her own, and small values by name.
CREATE TABLE dish (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  created_at TEXT NOT NULL,
  deleted_at TEXT
);

CREATE TABLE dish_version (
  dish_id TEXT NOT NULL REFERENCES dish (id),
  version INTEGER NOT NULL,
  label TEXT,
  text TEXT NOT NULL,
  choices TEXT NOT NULL,
  saved_at TEXT NOT NULL,
  PRIMARY KEY (dish_id, version)
);

CREATE TABLE own_food (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  content TEXT NOT NULL
);

CREATE TABLE kept_value (
  name TEXT PRIMARY KEY,
  content TEXT NOT NULL
);
