/** What weather does to wood: its moisture, and its stiffness with it. */
package castwell.analysis.wood;
