/** Trade units or SI, as the reader likes, and how many digits a figure may show. */
package castwell.web.unit;
