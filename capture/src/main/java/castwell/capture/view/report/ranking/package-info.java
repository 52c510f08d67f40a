/** What the ranking of a rack tells. */
package castwell.capture.view.report.ranking;
