/** Plans as they are made, told and gone on with. */
package castwell.capture.view.plan;
