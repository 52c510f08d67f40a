/**
 * The one room for JSON: every shape that is written or read, over HTTP, on the live feed, to a
 * broker, in reports and exports, is one record here, and its schema is made of it. What is stored
 * comes in and goes out as a record; nothing is stored or decided here. Elsewhere nobody builds
 * JSON by hand or reads back our own; a settings file and a chart's marks for its script are the
 * exceptions.
 */
package castwell.capture.view;
