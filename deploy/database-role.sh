#!/bin/sh
# Run once by the database container when it makes its folder: the bot's own role and database. The role
# is no superuser; it may create databases only because the restore drill needs a throw-away one.
set -eu
: "${PEEL_PASSWORD:?set it in database.env}"
psql --no-psqlrc --set=ON_ERROR_STOP=1 --username="$POSTGRES_USER" --dbname=postgres \
    --set=word="$PEEL_PASSWORD" <<'SQL'
CREATE ROLE peel LOGIN CREATEDB PASSWORD :'word';
CREATE DATABASE peel OWNER peel ENCODING 'UTF8' TEMPLATE template0;
SQL
