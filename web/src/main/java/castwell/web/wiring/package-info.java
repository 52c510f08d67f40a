/** Makes everything that runs, and ties it together over one data folder. */
package castwell.web.wiring;
