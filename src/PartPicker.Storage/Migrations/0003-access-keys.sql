-- Who may ask. The key itself is nowhere: only its hash is kept.

CREATE TABLE access_key (
    id         TEXT    NOT NULL PRIMARY KEY,
    hash       BLOB    NOT NULL UNIQUE,
    scope      TEXT    NOT NULL,
    -- Origins that a publishable key is bound to, a space between two; empty for a secret key.
    origins    TEXT    NOT NULL,
    name       TEXT    NOT NULL,
    created_ms INTEGER NOT NULL,
    expires_ms INTEGER,
    revoked_ms INTEGER
) STRICT;
