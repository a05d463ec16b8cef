-- A catalog item is a row of kind, id and JSON, so that a new field needs no new column.

CREATE TABLE revision (
    id         TEXT    NOT NULL PRIMARY KEY,
    -- Rises with each publication: the greatest is the catalog in force.
    published  INTEGER NOT NULL UNIQUE,
    created_ms INTEGER NOT NULL
) STRICT;

CREATE TABLE catalog_item (
    revision TEXT NOT NULL REFERENCES revision (id),
    kind     TEXT NOT NULL,
    id       TEXT NOT NULL,
    body     TEXT NOT NULL,
    PRIMARY KEY (revision, id)
) STRICT;

CREATE TABLE outlet (
    revision TEXT NOT NULL REFERENCES revision (id),
    id       TEXT NOT NULL,
    currency TEXT NOT NULL,
    PRIMARY KEY (revision, id)
) STRICT;

CREATE TABLE offer (
    revision    TEXT NOT NULL,
    outlet_id   TEXT NOT NULL,
    part_id     TEXT NOT NULL,
    price_minor INTEGER,
    stock       INTEGER,
    PRIMARY KEY (revision, outlet_id, part_id),
    FOREIGN KEY (revision, outlet_id) REFERENCES outlet (revision, id),
    FOREIGN KEY (revision, part_id) REFERENCES catalog_item (revision, id)
) STRICT;

CREATE TABLE pick (
    id               TEXT    NOT NULL PRIMARY KEY,
    -- No foreign key: a stored answer may outlive the catalog that it was made from.
    catalog_revision TEXT    NOT NULL,
    model_version    TEXT    NOT NULL,
    body             BLOB    NOT NULL,
    created_ms       INTEGER NOT NULL,
    expires_ms       INTEGER NOT NULL
) STRICT;

CREATE INDEX pick_by_expiry ON pick (expires_ms);
