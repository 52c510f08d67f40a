# Has a jar run beside a broker of its own, while it is asked what stands in a list. Sourced.

daemon="" broker="" listener=""
end() { # a process that was started here
  [ -z "$1" ] || { kill "$1" && wait "$1"; } 2>/dev/null || true
}

end_serving() { # in this order, so that the broker is told of the end, and passes it on
  end "$daemon"
  [ -z "$listener" ] || patiently grep -q '"status":"offline"' heard
  end "$listener"
  end "$broker"
  daemon="" broker="" listener=""
}

free_port() {
  node -e 'const s = require("net").createServer().listen(0, "127.0.0.1", () => { console.log(s.address().port); s.close(); })'
}

patiently() { # a command that may fail for a minute
  tries=1200
  until "$@"; do
    tries=$((tries - 1))
    [ $tries -gt 0 ] || { echo "In vain: $*" >&2 && return 3; }
    sleep 0.05
  done
}

start_broker() {
  broker_port=$(free_port)
  printf 'listener %s 127.0.0.1\nallow_anonymous true\nmax_queued_messages 0\n' "$broker_port" >broker.conf
  /usr/sbin/mosquitto -c broker.conf >broker.log 2>&1 &
  broker=$!
  patiently mosquitto_pub -p "$broker_port" -t nobody -m listens 2>/dev/null
  mosquitto_sub -V mqttv5 -p "$broker_port" -v -t 'castwell/#' >heard &
  listener=$!
}

serve() { # list, address
  start_broker
  sed "s/@BROKER@/$broker_port/" settings/served.toml >home/castwell/castwell.toml
  port=$(free_port)
  java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -jar "$jar" run --http "$2:$port" >said 2>complained </dev/null &
  daemon=$!
  case $2 in
  127.*) patiently grep -q " is at http" said ;;
  *) patiently grep -q "enter#" said ;; # the key that is needed there
  esac
  node "$here/asking.mjs" "$here/$1.txt" answers "$port" "$broker_port" $(sed -n 's/.*enter#//p' said)
  end_serving
  mv said "answers/live/$1 said"
  mv complained "answers/live/$1 complained"
  keep_what_was_heard "$1"
}

# Topic by topic, since stations speak over connections of their own, and without what the board is
# made to say. How often a silent board is asked who it is, how often health is told, and through what a
# link goes before its board has said anything, is a matter of time.
keep_what_was_heard() { # name
  node -e '
    const fs = require("fs"), topics = {};
    const heard = fs.readFileSync("heard", "utf8").split(/^(?=castwell\/)/m);
    for (const said of heard.filter(said => !/^\S+\/wire \$/.test(said)))
      (topics[said.split(" ", 1)[0]] ??= []).push(said);
    for (const [topic, all] of Object.entries(topics)) {
      const silent = said => /"status":"online".*"device":null/.test(said);
      const again = (said, i) => said === all[i - 1] || (silent(said) && silent(all[i + 1] ?? ""));
      const told = topic.endsWith("/health") ? all.slice(0, 1) : all.filter((said, i) => !again(said, i));
      fs.writeFileSync(`answers/broker/${process.argv[1]} ${topic.replaceAll("/", " ")}`, told.join(""));
    }' "$1"
}
