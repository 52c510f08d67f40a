/**
 * Holds every shape of JSON that is written or read, over HTTP, on the live feed, to a broker, in
 * reports and exports: each is one record here, and its schema is made of it. What is stored comes
 * in and goes out as a record; nothing is stored or decided here. No other package builds JSON by
 * hand or reads back our own, with two exceptions: a settings file, and a chart's marks for its
 * script.
 */
package castwell.capture.view;
