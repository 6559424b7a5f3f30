#!/bin/sh
# Runs once, when the database's volume is new: the owner of the schema and the restricted role of the app.
set -eu
psql -v ON_ERROR_STOP=1 -U "$POSTGRES_USER" -d "$POSTGRES_DB" \
    -v owner="$(cat /run/secrets/studio_owner_password)" -v app="$(cat /run/secrets/studio_app_password)" <<'SQL'
CREATE ROLE studio_owner LOGIN PASSWORD :'owner';
CREATE ROLE studio_app LOGIN PASSWORD :'app';
ALTER DATABASE studio OWNER TO studio_owner;
REVOKE ALL ON DATABASE studio FROM PUBLIC;
GRANT CONNECT ON DATABASE studio TO studio_app;
ALTER SCHEMA public OWNER TO studio_owner;
REVOKE ALL ON SCHEMA public FROM PUBLIC;
GRANT USAGE ON SCHEMA public TO studio_app;
SQL
