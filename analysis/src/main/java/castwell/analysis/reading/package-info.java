/**
 * Which of the edges that came close together are an arrow's, and how fast it was: every story that
 * could explain them is weighed, and the best is told with the next best. Why it doesn't count is
 * said in {@code verdict}, its uncertainty budget is made in {@code speed}.
 */
package castwell.analysis.reading;
