#!/bin/sh
# Creates the bot's role and database; the database container runs it once when it initialises its folder. The
# role is not a superuser; it may create databases because the restore drill needs a temporary one.
set -eu
: "${PEEL_PASSWORD:?set it in database.env}"
psql --no-psqlrc --set=ON_ERROR_STOP=1 --username="$POSTGRES_USER" --dbname=postgres \
    --set=word="$PEEL_PASSWORD" <<'SQL'
CREATE ROLE peel LOGIN CREATEDB PASSWORD :'word';
CREATE DATABASE peel OWNER peel ENCODING 'UTF8' TEMPLATE template0;
SQL
