#!/bin/sh
# Has one jar answer everything, and keeps each answer in a file of its own:
#   sh answers.sh JAR FOLDER
# FOLDER holds sheets, settings and recordings, and gets the answers.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
jar=$1
cd "$2"
export LC_ALL=C.UTF-8 TZ=America/Denver XDG_DATA_HOME=home
unset CASTWELL_KEY CASTWELL_MQTT_URL CASTWELL_MQTT_PASSWORD NOTIFY_SOCKET JAVA_TOOL_OPTIONS
mkdir -p answers/typed answers/typed-afterwards answers/live answers/broker home/castwell written

typed() { # list, folder
  java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -cp "$jar" "$here/Typed.java" "$here/$1" "answers/$2" </dev/null
}

. "$here/serving.sh"
trap end_serving EXIT
trap "exit 130" INT TERM
cp settings/typed.toml home/castwell/castwell.toml
typed commands.txt typed
serve requests 127.0.0.1
serve requests-with-key 0.0.0.0
typed commands-afterwards.txt typed-afterwards
cp -r written untagged/castwell.toml answers
