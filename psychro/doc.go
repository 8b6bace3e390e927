// Package psychro is being built.
package psychro
