/**
 * The live feed: server-sent events from each reader's own place on. A slow reader is served from
 * the store, and never waited for.
 */
package castwell.web.http.live;
