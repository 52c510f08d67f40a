/** The web server, put together of its four parts. */
package castwell.web.http;
