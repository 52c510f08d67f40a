/** The least arrow for every bow that carries what served before. */
package castwell.web.report.reach;
