/** Everything that runs, made and tied together over one data folder. */
package castwell.web.wiring;
