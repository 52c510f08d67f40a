/** Who is let in, and how much one outsider can take: keys, sites, connections, headers, TLS. */
package castwell.web.http.guard;
