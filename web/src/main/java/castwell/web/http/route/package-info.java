/**
 * Holds how a route of the API is declared: once, with what it takes and answers, from which both
 * the server and the API's document follow. What a route does is the room {@code api}'s.
 */
package castwell.web.http.route;
