/** The rack by cast, and which bows can't be told apart. */
package castwell.web.report.ranking;
