/** What the settings file says, read and checked. */
package castwell.web.settings;
