/** Reads and checks the settings file. */
package castwell.web.settings;
