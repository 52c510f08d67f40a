/** What a person may set about capture, as values. Reading the file is the web module's. */
package castwell.capture.settings;
