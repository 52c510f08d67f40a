# What may differ between two runs is given a name here, and nothing else is touched: perl -0777 -pi normal.pl FILES
# VERSION is the program's own, TODAY the dates on which it ran, as 2026-12-01|2026-12-02.
BEGIN { ($version, $today) = @ENV{qw(VERSION TODAY)}; ($compact = $today) =~ tr/-//d }

# versions
s/\b\Q$version\E\b/VERSION/g;
# moments of now, as instants, as names of files, in identities, in a log
s/\b(?:$today)[T ]\d\d:\d\d(?::\d\d(?:\.\d+)?)?Z?/NOW/g;
s/\b(?:$compact)T\d{6}Z/NOW/g;
s/\btyped-([\w-]+?)-\d{13}\b/typed-$1-NOW/g;
s/^\d\d:\d\d:\d\d (?=[A-Z]+ )/NOW /mg;
# today
s/\b(?:$today)\b/TODAY/g;
# free ports
s/(?<=\d\.\d\.\d\.\d:)\d{5}\b/PORT/g;
s/\bcastwell-\d{5}(?==)/castwell-PORT/g;
# keys, as a link, as a picture, as a cookie
s/(?<=enter#)\S+/KEY/g;
s/(?<=^Set-Cookie: castwell-PORT=)[\w-]{43}\b/TOKEN/mg;
s/Expires=[^;]+(?=; Max-Age=15552000)/Expires=IN HALF A YEAR/g;
s/^\e\[30;47m.*\n//mg;
# durations until now
s/\b\d+ (?:s|min|h|days) old\b/LASTING old/g;
s/\bin the last \d+ (?:s|min|h|days)\b/in the last LASTING/g;
s/(\(for )\d+ (?:s|min)(?=; )/$1LASTING/g;
# the disk
s/[\d.]+ GB are free: [\d,]+ days of listening, or [\d,]+ arrows; the database has [\d.]+ GB/DISK/g;
s/("value" ?: ?)[\d.]+(,\s*"unit" ?: ?"GB")/$1DISK$2/g;
s/^(castwell_disk_free_bytes|castwell_database_bytes|castwell_last_backup_timestamp_seconds) .*/$1 NOW/mg;
# that nothing happened for some time, on the live feed
s/^: still here\n\n//mg;
# what a link says before its board has said anything: whoever listens may not be there yet
s/^event: link\ndata: .*"device":null.*\n\n//mg;
s{(^castwell/lane-2/health .*?"title":"port",)"level":"[^"]*","sentence":"[^"]*","remedy":"[^"]*"}{$1"as it was at the start"}mg;
# the order of fields in objects that had none: it was another at each start
my %unordered = map { $_ => 1 } ("counts id name", "name retired", "at counts id mass_gr why",
  "from shots_derived_anew station", "entered may_change may_watch", "bytes file", "line reason");
sub in_order {
  my ($object) = @_;
  my %field = map { (/^"(\w+)"/)[0] => $_ } $object =~ /"\w+":(?:"(?:[^"\\]|\\.)*"|[^",{}\[\]]+)/g;
  return $unordered{join " ", sort keys %field} ? join(",", map { $field{$_} } sort keys %field) : $object;
}
s/(?<=\{)("\w+":(?:"(?:[^"\\]|\\.)*"|[^",{}\[\]]+)(?:,"\w+":(?:"(?:[^"\\]|\\.)*"|[^",{}\[\]]+))*)(?=\})/in_order($1)/ge;
# JSON a field a line, so that a difference can be read
s/,"/,\n"/g;
